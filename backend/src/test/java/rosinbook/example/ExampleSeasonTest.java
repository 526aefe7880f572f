package rosinbook.example;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Rig;
import rosinbook.notebook.Setlist;
import rosinbook.notebook.TakeSheet;
import rosinbook.readout.Phrasing;
import rosinbook.readout.ReadableChange;
import rosinbook.readout.Readout;
import rosinbook.readout.RecipeReadout;
import rosinbook.readout.RigTakes;
import rosinbook.readout.SetComparison;
import rosinbook.readout.Titles;
import rosinbook.take.Cleaner;
import rosinbook.take.TakeReport;

class ExampleSeasonTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 11, 19);
    private static final List<String> WHAT_CHANGED_SINCE_LAST_WEEK = List.of(
            "String 1, sensitivity: 15 → 17 (+2)",
            "String 4, sensitivity: 34 → 32 (−2)",
            "Star of the County Down: moved from 5 to 2",
            "Copper Weather: Overdrive, Drive: 55 → 50 % (−5)",
            "Copper Weather: Overdrive, Tone: 58 → 48 % (−10)",
            "Harbour Static: new",
            "Low Water at Quillness: Reverb, Mix: 32 → 36 % (+4)",
            "Low Water at Quillness: Reverb, Space: hall → chapel",
            "Low Water at Quillness: Shadow: new, on · Attack 40 · Level 24 % · Octave 1 · Sound choir",
            "The Lark in the Clear Air: new",
            "Drowsy Maggie: Overdrive, Tone: 58 → 48 % (−10)",
            "Drowsy Maggie: Delay, Time: dotted eighth (208.3 ms at 216 bpm) → eighth (138.9 ms at 216 bpm)",
            "The Kesh: left out");

    private static WrittenExample example;

    @BeforeAll
    static void write() {
        example = new WrittenExample(TODAY);
    }

    @AfterAll
    static void close() {
        example.close();
    }

    @Test
    void every_kind_of_sheet_is_there() {
        Map<Kind, Integer> counts = Map.of(
                Kind.INSTRUMENTS, 2,
                Kind.SYNTHS, 1,
                Kind.RIGS, 2,
                Kind.PIECES, 14,
                Kind.RECIPES, 17,
                Kind.SETLISTS, 5,
                Kind.LOG, 17,
                Kind.TAKES, 2);
        assertEquals(counts, example.look(Pages::counts));
        assertEquals(60, example.sheets);
        assertTrue(example.look(Pages::styles).size() >= 5);
    }

    @Test
    void the_takes_tell_that_the_ghosts_went_when_the_e_string_was_turned_down() {
        List<RigTakes.Played> played = example.newestOf(Kind.TAKES).stream()
                .map(revision -> {
                    TakeSheet sheet = (TakeSheet) revision.content();
                    byte[] bytes =
                            example.look(pages -> pages.read(sheet.midi()).orElseThrow());
                    TakeReport report =
                            TakeReport.of(Cleaner.STANDARD.clean(sheet.reader().read(bytes)));
                    Revision rig = example.look(pages -> Notebook.find(pages, Kind.RIGS, sheet.rig()));
                    return new RigTakes.Played(
                            revision.sheetId(), sheet.title(), sheet.day(), rig.number(), (Rig) rig.content(), report);
                })
                .toList();
        List<String> moves = RigTakes.of(played).moves();
        assertEquals(
                "Ghosts on string 1 went from 40 to 3.1 a minute when its sensitivity went from 20 to 16.",
                moves.get(0));
        assertTrue(
                moves.contains(
                        "Blips on string 3 went from 11 to 6.2 a minute when its sensitivity went from 20 to 23."),
                moves.toString());
    }

    @Test
    void tonight_against_last_week_tells_exactly_what_was_changed() {
        assertEquals(WHAT_CHANGED_SINCE_LAST_WEEK, sinceLastWeek(example));
    }

    @Test
    void three_kept_pieces_are_as_they_were() {
        SetComparison all = comparison(example, true);
        List<String> same = all.pieces().stream()
                .filter(piece -> piece.change() == SetComparison.Fate.KEPT)
                .filter(piece -> !piece.moved() && piece.changes().isEmpty())
                .map(SetComparison.PieceChanges::title)
                .toList();
        assertEquals(List.of("The Silver Spear", "The Coolin", "Nine Gates"), same);
    }

    @Test
    void recipes_follow_on_unless_they_were_left_pinned() {
        assertEquals(3, follows("copper-weather-drive").revision());
        assertEquals(3, follows("drowsy-maggie-drive").revision());
        assertEquals(2, follows("nine-gates-stomp").revision());
        assertEquals(4, follows("silver-spear-bright").revision());
        assertEquals(3, follows("coolin-slow").revision());
    }

    private static Reference follows(String key) {
        return example.content(key, Recipe.class).follows();
    }

    @Test
    void some_pieces_have_two_recipes_and_one_has_none() {
        assertEquals(2, recipesFor("drowsy-maggie"));
        assertEquals(2, recipesFor("coolin"));
        assertEquals(0, recipesFor("blackthorn-stick"));
    }

    private static long recipesFor(String piece) {
        return example.newestOf(Kind.RECIPES).stream()
                .filter(revision -> Season.id(piece).equals(((Recipe) revision.content()).piece()))
                .count();
    }

    @Test
    void only_the_reverb_turned_past_its_end_is_unusual() {
        List<String> unusual = new ArrayList<>();
        example.newestOf(Kind.RECIPES)
                .forEach(newest -> example.history(newest.sheetId()).forEach(revision -> {
                    RecipeReadout readout = example.look(pages -> RecipeReadout.of(pages, revision));
                    readout.lines().stream()
                            .filter(line -> line.unusual() != null)
                            .forEach(line -> unusual.add(revision.content().title() + ": " + line.unusual()));
                }));
        assertEquals(List.of("Harbour Static, fog: Length usually runs from 0.1 to 20"), unusual);
    }

    @Test
    void every_save_changed_something_and_it_can_be_put_into_words() {
        for (List<Revision> history : example.histories()) {
            for (int i = 1; i < history.size(); i++) {
                Revision was = history.get(i - 1);
                Revision now = history.get(i);
                List<ReadableChange> changes = example.look(
                        pages -> new Readout(Phrasing.plain(Titles.in(pages))).changes(was.json(), now.json()));
                assertFalse(changes.isEmpty(), () -> now.content().title() + ", revision " + now.number());
                assertFalse(now.reason().isEmpty(), () -> now.content().title() + ", revision " + now.number());
            }
        }
    }

    @Test
    void played_sets_hold_exact_revisions_and_tonight_is_open() {
        List<Revision> played = example.look(pages -> pages.setlists(Set.of(true), TODAY.minusYears(1), TODAY, 10));
        assertEquals(4, played.size());
        assertEquals(TODAY.minusDays(7), ((Setlist) played.get(0).content()).date());
        played.stream()
                .flatMap(revision -> ((Setlist) revision.content()).items().values().stream())
                .forEach(item -> {
                    assertTrue(item.recipe() == null || item.recipe().revision() != null);
                    assertTrue(item.rig().revision() != null);
                });
        Setlist tonight = example.content("set-tonight", Setlist.class);
        assertEquals(TODAY, tonight.date());
        assertEquals(Setlist.State.PLANNED, tonight.state());
    }

    @ParameterizedTest
    @ValueSource(strings = {"2024-02-29", "2027-01-01", "2031-07-15"})
    void it_is_the_same_season_for_any_day(String day) {
        LocalDate today = LocalDate.parse(day);
        try (WrittenExample other = new WrittenExample(today)) {
            assertEquals(WHAT_CHANGED_SINCE_LAST_WEEK, sinceLastWeek(other));
            assertEquals(today, other.content("set-tonight", Setlist.class).date());
            assertEquals(
                    today.minusDays(7),
                    other.content("set-last-week", Setlist.class).date());
            // The day begins first at UTC+14 (IANA time zone database, Pacific/Kiritimati).
            Instant earliestMorning = today.atStartOfDay().toInstant(ZoneOffset.ofHours(14));
            for (List<Revision> history : other.histories()) {
                for (int i = 0; i < history.size(); i++) {
                    assertTrue(history.get(i).savedAt().isBefore(earliestMorning));
                    assertTrue(i == 0
                            || history.get(i)
                                    .savedAt()
                                    .isAfter(history.get(i - 1).savedAt()));
                }
            }
        }
    }

    @Test
    void it_never_mixes_with_other_sheets() {
        NotebookNotEmpty refused =
                assertThrows(NotebookNotEmpty.class, () -> ExampleSeason.writeInto(example.store, TODAY.plusDays(1)));
        assertTrue(refused.getMessage().contains("60 sheets"), refused.getMessage());
        assertEquals(TODAY, example.content("set-tonight", Setlist.class).date());
    }

    private static SetComparison comparison(WrittenExample example, boolean all) {
        Setlist was = example.content("set-last-week", Setlist.class);
        Setlist now = example.content("set-tonight", Setlist.class);
        return example.look(pages -> SetComparison.of(pages, was, now, all));
    }

    private static List<String> sinceLastWeek(WrittenExample example) {
        SetComparison comparison = comparison(example, false);
        List<String> sentences = new ArrayList<>();
        comparison.rig().forEach(rig -> rig.changes().forEach(change -> sentences.add(change.sentence())));
        for (SetComparison.PieceChanges piece : comparison.pieces()) {
            if (piece.change() == SetComparison.Fate.ADDED) {
                sentences.add(piece.title() + ": new");
            }
            if (piece.change() == SetComparison.Fate.DROPPED) {
                sentences.add(piece.title() + ": left out");
            }
            if (piece.moved()) {
                sentences.add(piece.title() + ": moved from " + piece.wasPosition() + " to " + piece.nowPosition());
            }
            piece.changes().forEach(change -> sentences.add(piece.title() + ": " + change.sentence()));
        }
        return sentences;
    }
}
