package rosinbook.example;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.LocalDate;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import rosinbook.compare.MergePatch;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;
import rosinbook.notebook.SheetStore;

/** Writes the example season into an empty notebook. */
public final class ExampleSeason {
    private final Season season;
    private final SteppingClock clock = new SteppingClock();
    private final Notebook notebook;

    private ExampleSeason(Pages pages, LocalDate today) {
        season = new Season(today);
        notebook = new Notebook(new OneTransaction(pages), clock);
    }

    /**
     * The whole season or, if anything fails, nothing of it.
     *
     * @param today the evening for which the last set is planned; the one before was played seven days earlier
     * @return how many sheets were written
     * @throws NotebookNotEmpty if the notebook holds anything
     */
    public static int writeInto(SheetStore store, LocalDate today) {
        return store.change(pages -> {
            int there = sheets(pages);
            if (there > 0) {
                throw new NotebookNotEmpty(there);
            }
            new ExampleSeason(pages, today).replay();
            return sheets(pages);
        });
    }

    private static int sheets(Pages pages) {
        return pages.counts().values().stream().mapToInt(Integer::intValue).sum();
    }

    private void replay() {
        for (Step step : season.steps()) {
            clock.moveTo(season.instant(step));
            save(step);
        }
    }

    private void save(Step step) {
        UUID id = Season.id(step.key());
        Notebook.Note note = new Notebook.Note(step.by(), step.reason());
        if (step.file() != null) {
            notebook.keep(Season.file(step.file()));
        }
        if (step.content() != null) {
            notebook.create(step.kind(), id, season.told(step.content()), note, Optional.empty());
            return;
        }
        Revision newest = notebook.newest(step.kind(), id);
        if (step.played()) {
            notebook.markPlayed(id, newest.number(), note);
            return;
        }
        JsonNode content = MergePatch.apply(newest.json(), season.told(step.change()));
        var stayPinned = step.stayPinned().stream().map(Season::id).collect(Collectors.toSet());
        notebook.save(step.kind(), id, newest.number(), content, note, Optional.empty(), stayPinned);
    }

    /** Every save of the season within the transaction that is already open. */
    private record OneTransaction(Pages pages) implements SheetStore {
        @Override
        public <T> T change(Function<Pages, T> work) {
            return work.apply(pages);
        }

        @Override
        public <T> T look(Function<Pages, T> work) {
            return work.apply(pages);
        }
    }
}
