package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import rosinbook.store.LongHistory;
import rosinbook.testing.TestDatabase;

/** What browsing and comparing ask of the database, by the database's own count, in small and in large notebooks. */
class HistoryCostTest {
    private static final int SHORT = 500;
    private static final int LONG = 6_000;
    private static final int FEW = 60;
    private static final int MANY = 300;

    /** What looks for words, or counts, goes through all sheets of the notebook. */
    private static final Predicate<String> GOES_THROUGH_ALL =
            page -> page.contains("q=") || page.equals("/api/styles") || page.equals("/api/tonight");

    /**
     * What the database did.
     *
     * @param statements how many; 0 where it does not count them
     * @param rows that were read
     */
    private record Cost(long statements, long rows) {}

    @Test
    void browsing_and_comparing_cost_the_same_however_long_the_history_is() throws Exception {
        Map<String, Cost> usual = costs(SHORT, FEW);
        assertTrue(usual.values().stream().allMatch(cost -> cost.rows() > 0), usual::toString);
        assertNoMore(usual, costs(LONG, FEW), "a long history", page -> true);
        if (TestDatabase.inUse() == TestDatabase.Product.H2) {
            // PostgreSQL reads small tables whole where that is cheaper, and how small, its planner decides.
            assertNoMore(usual, costs(SHORT, MANY), "a notebook of many pieces", GOES_THROUGH_ALL.negate());
        }
    }

    private static void assertNoMore(
            Map<String, Cost> usual, Map<String, Cost> large, String ofWhat, Predicate<String> pages) {
        usual.forEach((page, before) -> {
            Cost after = large.get(page);
            if (pages.test(page)) {
                assertEquals(before.statements(), after.statements(), page + " asks as often");
                assertTrue(
                        after.rows() <= before.rows() + before.rows() / 10 + 20,
                        () -> page + " usually reads " + before.rows() + " rows, and " + after.rows() + " of "
                                + ofWhat);
            }
        });
    }

    /** Each page asked once of a program that has just been started, so that nothing is remembered. */
    private static Map<String, Cost> costs(int revisions, int morePieces) throws Exception {
        try (TestDatabase held = TestDatabase.fresh()) {
            try (TestDatabase writing = held.again()) {
                LongHistory.write(writing.database(), revisions, morePieces);
            }
            Map<String, Cost> costs = new LinkedHashMap<>();
            try (Connection watching = held.connect();
                    Statement watch = watching.createStatement()) {
                // On PostgreSQL an index alone answers for rows that were vacuumed; so all are, or none by chance.
                watch.execute(TestDatabase.inUse() == TestDatabase.Product.H2 ? "ANALYZE" : "VACUUM ANALYZE");
                for (String page : pages(held)) {
                    String name = page.replaceAll("/s/.*", "/s/…").replaceAll("[0-9a-f-]{36}(@\\d+)?", "…");
                    costs.put(name, cost(held, watch, page));
                }
            }
            return costs;
        }
    }

    private static List<String> pages(TestDatabase held) {
        try (Api api = new Api(held.again(), Patience.USUAL)) {
            List<JsonNode> sets = api.get("/api/setlists").items();
            JsonNode was = sets.get(1);
            String older = was.path("id").asText() + "@" + was.path("revision").asInt();
            String newer = sets.get(0).path("id").asText();
            String recipe = api.get("/api/recipes").items().get(1).path("id").asText();
            String exact = api.post(
                            "/api/shares",
                            "{'kind':'setlists','id':'" + was.path("id").asText() + "','revision':"
                                    + was.path("revision") + "}")
                    .json()
                    .path("token")
                    .asText();
            return List.of(
                    "/api/pieces",
                    "/api/pieces?q=winter&limit=20",
                    "/api/recipes",
                    "/api/rigs",
                    "/api/setlists",
                    "/api/log",
                    "/api/tonight",
                    "/api/search?q=jig",
                    "/api/styles",
                    "/api/setlists/compare?was=" + older + "&now=" + newer,
                    "/api/recipes/" + recipe,
                    "/api/recipes/" + recipe + "/compare",
                    "/api/recipes/" + recipe + "/resolved",
                    "/api/recipes/" + recipe + "/used-by",
                    "/api/recipes/" + recipe + "/revisions?limit=1",
                    "/api/shares",
                    "/s/" + exact);
        }
    }

    private static Cost cost(TestDatabase held, Statement watch, String page) throws SQLException {
        return TestDatabase.inUse() == TestDatabase.Product.H2
                ? costOnH2(held, watch, page)
                : costOnPostgres(held, watch, page);
    }

    private static Cost costOnH2(TestDatabase held, Statement watch, String page) throws SQLException {
        List<String> asked;
        try (AskedOfH2 listening = new AskedOfH2();
                Api api = new Api(held.again(), Patience.USUAL)) {
            api.get(page).expect(200);
            asked = listening.selects();
        }
        long rows = 0;
        for (String select : asked) {
            rows += AskedOfH2.rowsRead(watch, select);
        }
        return new Cost(asked.size(), rows);
    }

    /** A connection tells what it read when it ends, at the latest. */
    private static Cost costOnPostgres(TestDatabase held, Statement watch, String page) throws SQLException {
        long others = steadyConnections(watch);
        watch.execute("SELECT pg_stat_reset()");
        try (Api api = new Api(held.again(), Patience.USUAL)) {
            api.get(page).expect(200);
        }
        Instant end = Instant.now().plusSeconds(20);
        while (connections(watch) > others) {
            assertTrue(Instant.now().isBefore(end), "the program's connections do not end");
            Thread.onSpinWait();
        }
        watch.execute("SELECT pg_stat_clear_snapshot()");
        try (ResultSet counted =
                watch.executeQuery("SELECT SUM(seq_tup_read + COALESCE(idx_tup_fetch, 0)) FROM pg_stat_user_tables"
                        + " WHERE relname <> 'flyway_schema_history'")) {
            counted.next();
            return new Cost(0, counted.getLong(1));
        }
    }

    /** When those of before have ended, and told. */
    private static long steadyConnections(Statement watch) throws SQLException {
        long before = -1;
        long now = connections(watch);
        while (now != before) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(300));
            before = now;
            now = connections(watch);
        }
        return now;
    }

    private static long connections(Statement watch) throws SQLException {
        try (ResultSet counted = watch.executeQuery("SELECT count(*) FROM pg_stat_activity"
                + " WHERE datname = current_database() AND application_name = 'rosinbook'")) {
            counted.next();
            return counted.getLong(1);
        }
    }
}
