package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentSkipListSet;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.testing.Cable;
import rosinbook.testing.Caller;
import rosinbook.testing.Caller.Said;
import rosinbook.testing.PostgresServer;
import rosinbook.testing.RunningJar;

/** PostgreSQL goes away under the running program, and comes back. */
class DatabaseAwayIT {
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private PostgresServer.Address database;
    private Cable cable;
    private RunningJar program;
    private Caller caller;

    @BeforeEach
    void start() throws IOException {
        database = PostgresServer.migratedDatabase();
        URI far = URI.create(database.url().substring("jdbc:".length()));
        cable = Cable.to(far.getHost(), far.getPort());
        program = RunningJar.serve(through(cable.port()));
        caller = Caller.of(program);
        assertEquals(
                201,
                caller.post("/api/pieces", "{'content':{'title':'Low Water'}}").status());
    }

    @AfterEach
    void stop() throws IOException {
        if (program != null) {
            program.close();
        }
        if (cable != null) {
            cable.close();
        }
    }

    private PostgresServer.Address through(int port) {
        String name = database.url().substring(database.url().lastIndexOf('/'));
        return new PostgresServer.Address(
                "jdbc:postgresql://127.0.0.1:" + port + name, database.user(), database.password());
    }

    private static void assertAway(Said said) {
        assertEquals(503, said.status(), said::text);
        assertEquals("/problems/database-away", said.json().path("type").asText());
        assertTrue(said.whole().headers().firstValue("Retry-After").isPresent());
    }

    private void assertBackWithEverything(int pieces) {
        Said said = onceItIsBack(200, () -> caller.get("/api/pieces"));
        assertEquals(pieces, said.json().path("items").size());
        assertEquals(200, caller.get("/healthz").status());
        onceItIsBack(201, () -> caller.post("/api/pieces", "{'content':{'title':'Back'}}"));
    }

    private static Said onceItIsBack(int status, Supplier<Said> asking) {
        Instant end = Instant.now().plus(PATIENCE);
        Said said = asking.get();
        while (said.status() != status && Instant.now().isBefore(end)) {
            assertAway(said);
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
            said = asking.get();
        }
        assertEquals(status, said.status(), said::text);
        return said;
    }

    @Test
    void while_it_is_away_every_answer_says_so_and_afterwards_all_is_as_before() {
        cable.cut();
        List<CompletableFuture<Said>> asked = Stream.<Supplier<Said>>of(
                        () -> caller.get("/api/pieces"),
                        () -> caller.get("/api/tonight"),
                        () -> caller.get("/api/shares"),
                        () -> caller.get("/s/AAAAAAAAAAAAAAAAAAAAAA"),
                        () -> caller.post("/api/pieces", "{'content':{'title':'Too early'}}"))
                .map(asking -> CompletableFuture.supplyAsync(asking, each -> new Thread(each).start()))
                .toList();
        asked.forEach(answer -> assertAway(answer.join()));
        assertEquals(503, caller.get("/healthz").status());
        assertEquals(200, caller.get("/").status(), "the pages themselves need no database");
        cable.mend();
        assertBackWithEverything(1);
    }

    @Test
    void a_database_that_has_gone_silent_is_told_too() {
        cable.hold();
        Instant asked = Instant.now();
        assertAway(caller.get("/api/pieces"));
        assertTrue(
                Duration.between(asked, Instant.now()).compareTo(Duration.ofSeconds(40)) < 0, "nobody waits for ever");
        cable.mend();
        assertBackWithEverything(1);
    }

    @Test
    void a_server_that_ends_its_connections_and_takes_nobody_in_for_a_while_is_told() throws Exception {
        Set<String> answers = new ConcurrentSkipListSet<>();
        Thread reader = new Thread(() -> {
            while (!Thread.currentThread().isInterrupted()) {
                Said said = caller.get("/api/pieces");
                answers.add(said.status() + " " + said.json().path("type").asText());
            }
        });
        reader.start();
        allowConnections(false);
        for (int i = 0; i < 10; i++) {
            endConnections();
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(300));
        }
        allowConnections(true);
        assertBackWithEverything(1);
        reader.interrupt();
        reader.join();
        Set<String> possible = new TreeSet<>(List.of("200 ", "503 /problems/database-away"));
        assertEquals(possible, answers);
    }

    private void allowConnections(boolean allowed) throws SQLException {
        manage("ALTER DATABASE " + name() + " ALLOW_CONNECTIONS " + allowed);
    }

    private void endConnections() throws SQLException {
        manage("SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = '" + name() + "'");
    }

    private String name() {
        return database.url().substring(database.url().lastIndexOf('/') + 1);
    }

    /** From another database of the same server. */
    private static void manage(String statement) throws SQLException {
        try (Connection connection = PostgresServer.migratedDatabase().connect();
                var order = connection.createStatement()) {
            order.execute(statement);
        }
    }

    /** The command that docker-compose.yml gives the service's container, run here. */
    @Test
    void the_health_check_for_containers_tells_it_too() throws Exception {
        JsonNode file =
                new YAMLMapper().readTree(Path.of("../docker-compose.yml").toFile());
        List<String> command = new ArrayList<>();
        file.at("/services/rosinbook/healthcheck/test").forEach(part -> command.add(part.asText()));
        assertEquals("CMD", command.remove(0));
        String port = "" + URI.create(program.address()).getPort();
        command.replaceAll(part -> part.replace("8017", port));
        assertEquals(0, new ProcessBuilder(command).start().waitFor());
        cable.cut();
        assertTrue(new ProcessBuilder(command).start().waitFor() != 0);
        cable.mend();
        assertBackWithEverything(1);
        assertEquals(0, new ProcessBuilder(command).start().waitFor());
    }

    @Test
    void a_sheet_that_somebody_holds_too_long_is_answered_with_a_sentence() throws Exception {
        JsonNode piece = caller.get("/api/pieces").json().path("items").path(0);
        try (Connection other = database.connect();
                var order = other.createStatement()) {
            other.setAutoCommit(false);
            order.execute("SELECT * FROM sheet FOR UPDATE");
            Said said = caller.put("/api/pieces/" + piece.path("id").asText(), 1, "{'content':{'title':'High Water'}}");
            assertEquals(503, said.status(), said::text);
            assertEquals("/problems/busy", said.json().path("type").asText());
            other.rollback();
        }
        assertEquals(
                200,
                caller.put("/api/pieces/" + piece.path("id").asText(), 1, "{'content':{'title':'High Water'}}")
                        .status());
    }

    @Test
    void a_database_that_is_not_there_at_the_start_is_told_in_one_sentence() throws Exception {
        cable.close();
        assertRefused(through(cable.port()), "does not answer");
        assertRefused(
                new PostgresServer.Address(database.url(), database.user(), "wrong"), "ROSINBOOK_DATABASE_PASSWORD");
        assertRefused(
                new PostgresServer.Address(database.url() + "nowhere", database.user(), database.password()),
                "create it first");
        assertRefused(new PostgresServer.Address("jdbc:mysql://x/y", "", ""), "must begin with jdbc:postgresql:");
    }

    private static void assertRefused(PostgresServer.Address address, String reason) throws Exception {
        RunningJar.Ended ended = RunningJar.run(RunningJar.on(address, "serve", "--port", "0"));
        String told = ended.err().strip();
        assertEquals(2, ended.status(), told);
        assertTrue(told.contains(reason), told);
        assertFalse(told.contains("\tat ") || told.contains("Exception"), told);
        assertEquals(1, told.lines().count(), told);
    }
}
