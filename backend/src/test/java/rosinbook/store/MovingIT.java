package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static rosinbook.store.schema.Tables.REVISION;
import static rosinbook.store.schema.Tables.SHEET;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.notebook.Blob;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.testing.PostgresServer;
import rosinbook.testing.RunningJar;

/** A notebook moves from H2 to PostgreSQL and back by the commands of the packaged program. */
class MovingIT {
    private static final int MANY = 300;
    private static final List<String> AWKWARD = List.of(
            "🎻 Ωδή 弓 שלום",
            "e\u0301 and \u00e9 are two spellings",
            "tab\tline\nquote\" backslash\\ percent% 'apostrophe' \u2028 \u200f",
            "\ud83d\udc68\u200d\ud83d\udc69\u200d\ud83d\udc67 \uffff \ue000",
            "\u0001 \u001f \u007f \u0085");

    @TempDir
    private Path folder;

    /** A revision as it stands in a database. */
    private record Row(
            String kind,
            UUID sheetId,
            int number,
            Integer parent,
            String content,
            String sha256,
            Instant savedAt,
            String savedBy,
            String reason) {}

    private static List<Row> rows(Database database) {
        List<Row> rows = database.look(sql -> sql.select(
                        SHEET.KIND,
                        REVISION.SHEET_ID,
                        REVISION.REVISION_NUMBER,
                        REVISION.PARENT_NUMBER,
                        REVISION.CONTENT,
                        REVISION.CONTENT_SHA256,
                        REVISION.SAVED_AT,
                        REVISION.SAVED_BY,
                        REVISION.REASON)
                .from(REVISION)
                .join(SHEET)
                .on(RevisionRow.OF_SHEET)
                .orderBy(REVISION.SHEET_ID, REVISION.REVISION_NUMBER)
                .fetch(found -> new Row(
                        found.value1(),
                        found.value2(),
                        found.value3(),
                        found.value4(),
                        found.value5(),
                        found.value6(),
                        found.value7().toInstant(),
                        found.value8(),
                        found.value9())));
        rows.forEach(row -> assertEquals(ContentJson.sha256(row.content()), row.sha256()));
        return rows;
    }

    private static void run(ProcessBuilder command) throws IOException, InterruptedException {
        assertEquals(0, command.inheritIO().start().waitFor(), () -> String.join(" ", command.command()));
    }

    private static void onH2(Path data, String... arguments) throws IOException, InterruptedException {
        List<String> command = RunningJar.command(arguments);
        command.addAll(List.of("--data", data.toString()));
        run(new ProcessBuilder(command));
    }

    private static void in(Path data, Consumer<Database> work) {
        try (Database database = Database.inFolder(data)) {
            work.accept(database);
        }
    }

    /** A clock that stands at an odd microsecond, another one for every sheet. */
    private static Notebook at(Database database, int index) {
        Instant moment = Instant.parse("2026-03-29T00:59:59.999999Z").plusNanos(1_000L * 7_919 * index);
        return new Notebook(DatabaseSheetStore.onlyNotebook(database, moment), Clock.fixed(moment, ZoneOffset.UTC));
    }

    private static byte[] file() {
        byte[] bytes = new byte[1_700_001];
        new Random(8017).nextBytes(bytes);
        return bytes;
    }

    /** Names and notes in many scripts, a large file, numbers at the edges, and a sheet that was saved very often. */
    private static void writeAwkward(Database database) {
        for (int i = 0; i < AWKWARD.size(); i++) {
            ObjectNode piece = ContentJson.strict().createObjectNode();
            piece.put("title", "Awkward " + i).put("notes", AWKWARD.get(i).repeat(50));
            piece.put(
                    "tempoBpm",
                    List.of(10.000000000000002, 399.99999999999994, 1e1, 33.333333333333336, 120.0)
                            .get(i));
            at(database, i).create(Kind.PIECES, UUID.randomUUID(), piece, note(AWKWARD.get(i)), Optional.empty());
        }
        Notebook notebook = at(database, 50);
        Blob blob = notebook.keep(file());
        ObjectNode take = ContentJson.strict().createObjectNode().put("title", "Long take");
        take.putObject("midi").put("sha256", blob.sha256()).put("size", blob.size());
        notebook.create(Kind.TAKES, UUID.randomUUID(), take, note("Jonas"), Optional.empty());
        UUID often = UUID.randomUUID();
        notebook.create(Kind.PIECES, often, numbered(0), note("Mira"), Optional.empty());
        for (int i = 1; i < MANY; i++) {
            at(database, 50 + i)
                    .save(
                            Kind.PIECES,
                            often,
                            i,
                            numbered(i),
                            note(i % 2 == 0 ? "Mira" : "Ada"),
                            Optional.empty(),
                            Set.of());
        }
    }

    private static ObjectNode numbered(int number) {
        return ContentJson.strict()
                .createObjectNode()
                .put("title", "Saved often")
                .put("notes", "state " + number);
    }

    private static Notebook.Note note(String by) {
        return new Notebook.Note(by.length() > 100 ? by.substring(0, 100) : by, "because " + by.hashCode());
    }

    @Test
    void every_revision_file_and_moment_is_the_same_on_the_other_database_and_back_again() throws Exception {
        Path first = folder.resolve("first");
        Path last = folder.resolve("last");
        Path out = folder.resolve("out.zip");
        Path back = folder.resolve("back.zip");
        PostgresServer.Address postgres = PostgresServer.emptyDatabase();
        onH2(first, "example");
        in(first, MovingIT::writeAwkward);

        onH2(first, "export", out.toString());
        run(RunningJar.on(postgres, "import", out.toString()));
        run(RunningJar.on(postgres, "verify"));
        run(RunningJar.on(postgres, "export", back.toString()));
        onH2(last, "import", back.toString());
        onH2(last, "verify");

        in(first, origin -> {
            List<Row> rows = rows(origin);
            assertTrue(rows.size() > MANY + 60, "there was something to move: " + rows.size());
            try (Database there = postgres.open()) {
                assertEquals(rows, rows(there));
                assertArrayEquals(
                        file(),
                        at(there, 0).look(pages -> pages.read(Blob.of(file()))).orElseThrow());
            }
            in(last, home -> assertEquals(rows, rows(home)));
        });
        assertEquals(contents(out), contents(back));
    }

    @Test
    void what_only_reads_makes_no_tables_where_there_are_none() throws Exception {
        PostgresServer.Address empty = PostgresServer.emptyDatabase();
        Process verify =
                RunningJar.on(empty, "verify").redirectErrorStream(true).start();
        String told = new String(verify.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(2, verify.waitFor(), told);
        assertTrue(told.contains("there is no notebook in this PostgreSQL database"), told);
        try (Connection connection = empty.connect();
                Statement statement = connection.createStatement();
                ResultSet tables =
                        statement.executeQuery("SELECT COUNT(*) FROM pg_tables WHERE schemaname = 'public'")) {
            assertTrue(tables.next());
            assertEquals(0, tables.getInt(1));
        }
    }

    @Test
    void what_was_written_on_postgresql_meanwhile_comes_home_beside_what_is_there() throws Exception {
        Path home = folder.resolve("home");
        Path zip = folder.resolve("season.zip");
        PostgresServer.Address postgres = PostgresServer.emptyDatabase();
        onH2(home, "example");
        onH2(home, "export", zip.toString());
        run(RunningJar.on(postgres, "import", zip.toString()));
        try (Database there = postgres.open()) {
            writeAwkward(there);
        }
        run(RunningJar.on(postgres, "export", zip.toString()));
        onH2(home, "import", zip.toString());
        onH2(home, "import", zip.toString());
        onH2(home, "verify");
        try (Database there = postgres.open()) {
            List<Row> rows = rows(there);
            in(home, database -> assertEquals(rows, rows(database)));
        }
    }

    private static Map<String, String> contents(Path zip) throws IOException {
        return Zips.contents(Files.readAllBytes(zip));
    }
}
