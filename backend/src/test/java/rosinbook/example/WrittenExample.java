package rosinbook.example;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.IntStream;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.testing.TestDatabase;

/** The example season in a database of its own. */
final class WrittenExample implements AutoCloseable {
    final DatabaseSheetStore store;
    final int sheets;
    private final TestDatabase database;

    WrittenExample(LocalDate today) {
        database = TestDatabase.fresh();
        store = DatabaseSheetStore.onlyNotebook(database.database(), Instant.EPOCH);
        sheets = ExampleSeason.writeInto(store, today);
    }

    <T> T look(Function<Pages, T> work) {
        return store.look(work);
    }

    Revision newest(String key) {
        return look(pages -> pages.newest(Season.id(key)).orElseThrow());
    }

    <C extends Content> C content(String key, Class<C> type) {
        return type.cast(newest(key).content());
    }

    /** Every revision of a sheet, oldest first. */
    List<Revision> history(UUID id) {
        return look(
                pages -> IntStream.rangeClosed(1, pages.newest(id).orElseThrow().number())
                        .mapToObj(number -> pages.revision(id, number).orElseThrow())
                        .toList());
    }

    List<Revision> newestOf(Kind kind) {
        return look(pages -> pages.list(new Pages.Query(Optional.of(kind), "", Optional.empty(), Optional.empty(), 200))
                .items());
    }

    List<List<Revision>> histories() {
        return Arrays.stream(Kind.values())
                .flatMap(kind -> newestOf(kind).stream())
                .map(revision -> history(revision.sheetId()))
                .toList();
    }

    @Override
    public void close() {
        database.close();
    }
}
