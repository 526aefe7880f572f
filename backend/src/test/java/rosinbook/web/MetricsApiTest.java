package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.notebook.SheetStore;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.testing.TestDatabase;
import rosinbook.web.Exposition.Sample;

class MetricsApiTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    private Exposition metrics() {
        Answer answer = api.get("/api/metrics").expect(200);
        assertEquals(
                "text/plain;version=0.0.4;charset=utf-8",
                answer.header("Content-Type").replace(" ", ""));
        return Exposition.parse(answer.text());
    }

    /** What is counted is counted when the last byte has gone, which the client may see a moment earlier. */
    private void awaitFigure(double expected, String name, String... labels) {
        Instant end = Instant.now().plus(Duration.ofSeconds(20));
        double figure = metrics().figure(name, labels);
        while (figure != expected && Instant.now().isBefore(end)) {
            LockSupport.parkNanos(Duration.ofMillis(5).toNanos());
            figure = metrics().figure(name, labels);
        }
        assertEquals(expected, figure, name + List.of(labels));
    }

    @Test
    void requests_are_counted_by_method_route_and_status_and_measured_in_a_histogram() {
        for (int i = 0; i < 3; i++) {
            api.create("pieces", "{'title':'Piece " + i + "'}");
        }
        api.post("/api/pieces", "{'content':{}}").expect(422);
        String[] saved = {"method", "POST", "route", "/api/{kind}", "status", "201"};
        awaitFigure(3, "http_server_requests_seconds_count", saved);
        awaitFigure(1, "http_server_requests_seconds_count", "method", "POST", "route", "/api/{kind}", "status", "422");
        Exposition metrics = metrics();
        assertEquals("histogram", metrics.typeOf("http_server_requests_seconds"));
        List<Sample> buckets = metrics.samples("http_server_requests_seconds_bucket", saved);
        assertEquals("+Inf", buckets.get(buckets.size() - 1).labels().get("le"));
        assertEquals(3, buckets.get(buckets.size() - 1).value());
        assertTrue(buckets.size() > 8, buckets::toString);
        assertTrue(metrics.figure("http_server_requests_seconds_sum", saved) > 0);
    }

    @Test
    void saves_and_opened_shares_are_counted() {
        String rig = api.create("rigs", new Gear(api).rig(20, 20)).id();
        double before = metrics().figure("rosinbook_saves_total");
        String id = api.create("pieces", "{'title':'One'}").id();
        api.save("pieces", id, 1, "{'title':'Two'}");
        api.post("/api/pieces/" + id + "/revisions/1/restore", 2, "{}").expect(200);
        api.put("/api/pieces/" + id, 1, "{'content':{}}").expect(422);
        awaitFigure(before + 3, "rosinbook_saves_total");
        String token = api.post("/api/shares", "{'kind':'rigs','id':'" + rig + "'}")
                .json()
                .path("token")
                .asText();
        api.get("/s/" + token).expect(200);
        api.get("/s/" + token + "/data").expect(200);
        api.get("/s/AAAAAAAAAAAAAAAAAAAAAA").expect(404);
        awaitFigure(2, "rosinbook_share_openings_total");
    }

    @Test
    void what_is_counted_as_a_save_or_an_opening_is_a_route() {
        Set<String> routes = Description.operations();
        assertTrue(routes.containsAll(Metrics.SAVES), Metrics.SAVES::toString);
        assertTrue(routes.containsAll(Metrics.SHARE_OPENINGS), Metrics.SHARE_OPENINGS::toString);
    }

    @Test
    void the_database_its_connections_and_the_virtual_machine_are_told_of() {
        System.gc(); // what is only measured must not be let go of
        Exposition metrics = metrics();
        assertEquals(1, metrics.figure("rosinbook_database_up"));
        int most = TestDatabase.inUse() == TestDatabase.Product.H2 ? 8 : 10 + 10; // ten to save, ten to look
        assertEquals(most, metrics.figure("rosinbook_database_pool_most"));
        assertEquals(0, metrics.figure("rosinbook_database_pool_waiting"));
        assertTrue(
                metrics.figure("rosinbook_database_pool_active") + metrics.figure("rosinbook_database_pool_idle") > 0);
        for (String name : List.of("jvm_memory_used_bytes", "jvm_threads_live_threads", "process_uptime_seconds")) {
            assertTrue(metrics.samples(name).stream().anyMatch(sample -> sample.value() > 0), name);
        }
    }

    @Test
    void a_database_that_is_away_is_told_and_is_not_waited_for() {
        AtomicInteger asked = new AtomicInteger();
        Heartbeat never = new Heartbeat(() -> {
            asked.incrementAndGet();
            LockSupport.parkNanos(Duration.ofSeconds(20).toNanos());
            return true;
        });
        assertFalse(never.beats());
        assertFalse(never.beats());
        assertEquals(1, asked.get(), "it is not asked again before it has answered");
        assertFalse(new Heartbeat(() -> false).beats());
        assertFalse(new Heartbeat(() -> {
                    throw new IllegalStateException("broken");
                })
                .beats());
        assertTrue(new Heartbeat(() -> true).beats());
    }

    private static boolean awaited(CountDownLatch latch) {
        try {
            return latch.await(60, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            throw new IllegalStateException(interrupted);
        }
    }

    @Test
    void however_many_ask_for_its_health_the_database_is_asked_once_at_a_time() throws Exception {
        int readers = TestDatabase.inUse() == TestDatabase.Product.H2 ? 8 : 10;
        CountDownLatch reading = new CountDownLatch(readers);
        CountDownLatch goOn = new CountDownLatch(1);
        SheetStore sheets = DatabaseSheetStore.of(api.database.database(), DatabaseSheetStore.ONLY_NOTEBOOK);
        ExecutorService threads = Executors.newCachedThreadPool();
        try {
            for (int i = 0; i < readers; i++) {
                threads.submit(() -> sheets.look(pages -> {
                    reading.countDown();
                    return awaited(goOn);
                }));
            }
            assertTrue(awaited(reading));
            List<Future<Answer>> answers = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                answers.add(threads.submit(() -> api.get("/healthz")));
            }
            int mostWaiting = 0;
            while (!answers.stream().allMatch(Future::isDone)) {
                mostWaiting =
                        Math.max(mostWaiting, api.database.database().pool().waiting());
            }
            for (Future<Answer> answer : answers) {
                answer.get().expect(503);
            }
            assertEquals(1, mostWaiting);
        } finally {
            goOn.countDown();
            threads.shutdownNow();
        }
    }

    @Test
    void no_request_can_make_a_label_of_its_own() {
        metrics();
        for (int i = 0; i < 40; i++) {
            api.get("/api/nowhere-" + i + "/x/y/z").expect(404);
            api.get("/s/secret" + i).expect(404);
            api.get("/api/secret" + i).expect(404);
            api.get("/secret-" + i);
            api.get("/pieces/secret-" + i);
            api.send(api.to("/secret-" + i).method("SECRET" + i, BodyPublishers.noBody()));
        }
        awaitFigure(40, "http_server_requests_seconds_count", "method", "OTHER", "route", "(none)", "status", "404");
        Set<String> labels = new HashSet<>();
        Exposition metrics = metrics();
        metrics.samples("http_server_requests_seconds_count")
                .forEach(sample -> labels.add(sample.labels().toString()));
        assertTrue(labels.size() < 12, labels::toString);
        assertFalse(metrics.text().toLowerCase(java.util.Locale.ROOT).contains("secret"), metrics.text());
        Set<String> described = Description.operations().stream()
                .map(operation -> operation.split(" ")[1])
                .collect(Collectors.toSet());
        described.addAll(Set.of("(page)", "(none)"));
        metrics.samples("http_server_requests_seconds_count")
                .forEach(sample -> assertTrue(described.contains(sample.labels().get("route")), sample::toString));
    }

    @Test
    void the_description_says_who_may_read_it() {
        JsonNode operation = Description.operation("GET", "/api/metrics");
        assertEquals("keep", operation.path("x-right").asText());
    }

    @Test
    void a_key_that_could_be_guessed_is_refused_and_none_is_told() {
        var problem = assertThrows(IllegalArgumentException.class, () -> new MetricsKey("too-short"));
        assertFalse(problem.getMessage().contains("too-short"), problem.getMessage());
        assertFalse(new MetricsKey("x".repeat(24)).toString().contains("x"));
    }
}
