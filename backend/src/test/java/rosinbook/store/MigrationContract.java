package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static rosinbook.store.schema.Tables.SHEET;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import rosinbook.access.Access;
import rosinbook.access.NotebookEntry;
import rosinbook.access.PlayerName;
import rosinbook.access.Right;
import rosinbook.notebook.Blob;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.share.ShareToken;
import rosinbook.share.Shares;

/** A database of before, with something in it, brought up to date. */
abstract class MigrationContract {
    private static final String NOTEBOOK = "00000000-0000-0000-0000-000000000001";
    private static final UUID PIECE = UUID.fromString("11111111-0000-4000-8000-000000000001");
    private static final UUID RECIPE = UUID.fromString("11111111-0000-4000-8000-000000000002");
    private static final UUID RIG = UUID.fromString("11111111-0000-4000-8000-000000000003");
    private static final ShareToken TOKEN = new ShareToken("AAAAAAAAAAAAAAAAAAAAAA");
    private static final byte[] MIDI = "MThd".getBytes(StandardCharsets.UTF_8);

    /** A database without tables. */
    abstract void empty() throws SQLException;

    /** How Flyway reaches it: address, user, password. */
    abstract List<String> way();

    abstract Connection connect() throws SQLException;

    /** The program's own way in, which brings it up to date. */
    abstract Database open();

    @Test
    void everything_of_a_notebook_of_one_owner_is_there_afterwards() throws SQLException {
        empty();
        Flyway.configure()
                .dataSource(way().get(0), way().get(1), way().get(2))
                .locations("classpath:migrations")
                .target("4")
                .load()
                .migrate();
        try (Connection connection = connect()) {
            fill(connection);
        }
        try (Database database = open()) {
            Notebook notebook =
                    new Notebook(DatabaseSheetStore.of(database, DatabaseSheetStore.ONLY_NOTEBOOK), Clock.systemUTC());
            assertEquals("Two", notebook.newest(Kind.PIECES, PIECE).content().title());
            assertEquals(
                    "One", notebook.revision(Kind.PIECES, PIECE, 1).content().title());
            assertEquals(
                    Set.of(RECIPE, RIG),
                    notebook.look(pages -> pages.usedBy(PIECE)).stream()
                            .map(Pages.Use::id)
                            .collect(Collectors.toSet()));
            assertEquals(1, notebook.look(Pages::styles).get("reel"));
            assertEquals(
                    Optional.of(20.0),
                    notebook.look(pages -> pages.stringHistory(RIG))
                            .get(1)
                            .get(0)
                            .sensitivity());
            assertArrayEquals(
                    MIDI, notebook.look(pages -> pages.read(Blob.of(MIDI))).orElseThrow());
            assertEquals(
                    List.of(),
                    new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK)
                            .verify()
                            .damages());
            assertEquals(Optional.of(TitleOrder.key("Two")), database.ask(sql -> sql.select(SHEET.TITLE_ORDER)
                    .from(SHEET)
                    .where(SHEET.ID.eq(PIECE))
                    .fetchOptional(SHEET.TITLE_ORDER)));
            shares(database, notebook);
            keeper(database);
        }
    }

    private static void shares(Database database, Notebook notebook) {
        DatabaseShareStore.Found found =
                DatabaseShareStore.byToken(database, TOKEN.sha256()).orElseThrow();
        assertEquals(DatabaseSheetStore.ONLY_NOTEBOOK, found.notebookId());
        Shares shares = new Shares(
                notebook,
                new DatabaseShareStore(database, DatabaseSheetStore.ONLY_NOTEBOOK),
                Clock.systemUTC(),
                new SecureRandom());
        byte[] title = shares.open(
                        found.share(), "title", true, view -> view.title().getBytes(StandardCharsets.UTF_8))
                .orElseThrow();
        assertEquals("Everyday", new String(title, StandardCharsets.UTF_8));
        assertEquals(4, shares.list().get(0).opened());
    }

    /** The owner's passphrase is the keeper's; the session of before is over. */
    private static void keeper(Database database) {
        DatabaseAccessStore players = new DatabaseAccessStore(database);
        Access access = new Access(players, Clock.systemUTC(), new SecureRandom());
        assertTrue(access.hasPassphrase());
        var owner = players.account(new PlayerName("Owner")).orElseThrow();
        assertTrue(owner.player().isKeeper());
        assertEquals(Optional.of("a hash"), owner.hash());
        assertFalse(access.session("a token of before").isPresent());
        List<NotebookEntry> notebooks =
                new DatabaseNotebookStore(database).ofPlayer(owner.player().id());
        assertEquals(
                List.of(new NotebookEntry(DatabaseSheetStore.ONLY_NOTEBOOK, "Rosinbook", Right.OWN, List.of("owner"))),
                notebooks);
    }

    private static void fill(Connection connection) throws SQLException {
        String when = "TIMESTAMP WITH TIME ZONE '2026-11-12 20:00:00.123456+00:00'";
        run(connection, "INSERT INTO notebook VALUES ('" + NOTEBOOK + "', 'Rosinbook', " + when + ")");
        sheet(connection, PIECE, "pieces", 2, "Two");
        sheet(connection, RECIPE, "recipes", 1, "Everyday");
        sheet(connection, RIG, "rigs", 1, "On the desk");
        revision(connection, PIECE, 1, "{\"title\":\"One\"}");
        revision(connection, PIECE, 2, "{\"styles\":[\"reel\"],\"title\":\"Two\"}");
        revision(connection, RECIPE, 1, "{\"piece\":\"" + PIECE + "\",\"settings\":{},\"title\":\"Everyday\"}");
        revision(
                connection,
                RIG,
                1,
                "{\"title\":\"On the desk\",\"date\":\"2026-11-12\",\"instrument\":{\"id\":\"" + PIECE
                        + "\"},\"synth\":{\"id\":\"" + PIECE
                        + "\"},\"assignments\":{\"1\":{\"input\":1,\"sensitivity\":20}}}");
        run(connection, "INSERT INTO sheet_style VALUES ('" + NOTEBOOK + "', '" + PIECE + "', 'reel')");
        link(connection, RECIPE, "piece");
        link(connection, RIG, "instrument");
        link(connection, RIG, "synth");
        run(
                connection,
                "INSERT INTO rig_string VALUES ('" + NOTEBOOK + "', '" + RIG + "', 1, 1, 1, 20, 0, DATE '2026-11-12')");
        String share = "22222222-0000-4000-8000-000000000001";
        run(
                connection,
                "INSERT INTO share VALUES ('" + share + "', '" + NOTEBOOK + "', '" + TOKEN.sha256()
                        + "', 'For Jonas', '" + RECIPE + "', 1, " + when + ", NULL, NULL, NULL, 3)");
        for (UUID shown : List.of(RECIPE, PIECE)) {
            run(
                    connection,
                    "INSERT INTO share_revision VALUES ('" + share + "', '" + NOTEBOOK + "', '" + shown + "', 1)");
        }
        run(connection, "INSERT INTO notebook_owner VALUES ('" + NOTEBOOK + "', 'a hash', " + when + ")");
        run(
                connection,
                "INSERT INTO sign_in_session VALUES ('" + ContentJson.sha256("a token of before") + "', '" + NOTEBOOK
                        + "', " + when + ", TIMESTAMP WITH TIME ZONE '2099-11-12 20:00:00+00:00')");
        Blob blob = Blob.of(MIDI);
        run(connection, "INSERT INTO blob VALUES ('" + NOTEBOOK + "', '" + blob.sha256() + "', 4)");
        try (var part = connection.prepareStatement("INSERT INTO blob_part VALUES (CAST(? AS UUID), ?, 0, ?)")) {
            part.setString(1, NOTEBOOK);
            part.setString(2, blob.sha256());
            part.setBytes(3, MIDI);
            part.execute();
        }
    }

    private static void sheet(Connection connection, UUID id, String kind, int head, String title) throws SQLException {
        run(
                connection,
                "INSERT INTO sheet VALUES ('" + id + "', '" + NOTEBOOK + "', '" + kind + "', " + head + ", '" + title
                        + "', '', DATE '2026-11-12', FALSE, TIMESTAMP WITH TIME ZONE '2026-11-12 20:00:00+00:00')");
    }

    private static void link(Connection connection, UUID from, String field) throws SQLException {
        run(
                connection,
                "INSERT INTO sheet_link VALUES ('" + NOTEBOOK + "', '" + from + "', '/" + field + "', '"
                        + field.toUpperCase(Locale.ROOT) + "', '" + PIECE + "', NULL)");
    }

    private static void revision(Connection connection, UUID id, int number, String content) throws SQLException {
        String json = ContentJson.canonical(ContentJson.parse(content.getBytes(StandardCharsets.UTF_8)));
        run(
                connection,
                "INSERT INTO revision VALUES ('" + NOTEBOOK + "', '" + id + "', " + number + ", "
                        + (number == 1 ? "NULL" : Integer.toString(number - 1)) + ", 1, '" + json + "', '"
                        + ContentJson.sha256(json)
                        + "', TIMESTAMP WITH TIME ZONE '2026-11-12 20:00:00+00:00', 'Mira', '')");
    }

    private static void run(Connection connection, String sql) throws SQLException {
        try (var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
