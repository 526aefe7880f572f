package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rosinbook.testing.Caller;
import rosinbook.testing.Caller.Said;
import rosinbook.testing.PostgresServer;
import rosinbook.testing.RunningJar;

/** Two processes of the packaged program on one PostgreSQL database. */
class TwoProcessesIT {
    private static final List<String> FIELDS = List.of("composer", "notes", "key", "meter");
    private static final int SAVES = 25;

    private static PostgresServer.Address address;
    private static RunningJar here;
    private static RunningJar there;
    private static List<Caller> both;

    @BeforeAll
    static void start() throws Exception {
        address = PostgresServer.emptyDatabase();
        List<RunningJar> started = startTogether(address);
        here = started.get(0);
        there = started.get(1);
        both = List.of(Caller.of(here), Caller.of(there));
    }

    @AfterAll
    static void stop() {
        if (here != null) {
            here.close();
            there.close();
        }
    }

    private static List<RunningJar> startTogether(PostgresServer.Address database) throws Exception {
        return together(List.of(() -> RunningJar.serve(database), () -> RunningJar.serve(database)));
    }

    /** Runs all at the same time; each must end well. */
    private static <T> List<T> together(List<Callable<T>> tasks) throws Exception {
        ExecutorService hands = Executors.newFixedThreadPool(tasks.size());
        try {
            List<Future<T>> running = tasks.stream().map(hands::submit).toList();
            List<T> results = new ArrayList<>();
            for (Future<T> task : running) {
                results.add(task.get());
            }
            return results;
        } finally {
            hands.shutdownNow();
        }
    }

    private static Caller caller(int number) {
        return both.get(number % 2);
    }

    private static JsonNode expect(int status, Said said) {
        assertEquals(status, said.status(), said::text);
        return said.json();
    }

    private static String piece(String content) {
        return expect(201, caller(0).post("/api/pieces", "{'content':" + content + "}"))
                .path("id")
                .asText();
    }

    private static String body(ObjectNode content) {
        return "{\"content\":" + content + "}";
    }

    private static void assertWithoutGaps(String path, int last) {
        List<Integer> numbers = new ArrayList<>();
        String after = "";
        do {
            JsonNode page = expect(200, caller(1).get(path + "/revisions?limit=200" + after));
            page.path("items").forEach(item -> numbers.add(item.path("revision").asInt()));
            after = page.has("next") ? "&after=" + page.path("next").asText() : "";
        } while (!after.isEmpty());
        List<Integer> expected =
                IntStream.rangeClosed(1, last).map(i -> last + 1 - i).boxed().toList();
        assertEquals(expected, numbers);
    }

    @Test
    void both_started_at_once_on_an_empty_database_and_serve_it() throws Exception {
        for (int round = 0; round < 2; round++) {
            List<RunningJar> programs = startTogether(PostgresServer.emptyDatabase());
            try {
                for (RunningJar program : programs) {
                    assertTrue(expect(200, Caller.of(program).get("/api/tonight"))
                            .path("empty")
                            .asBoolean());
                }
                expect(201, Caller.of(programs.get(0)).post("/api/pieces", "{'content':{'title':'One'}}"));
                assertEquals(
                        1,
                        expect(200, Caller.of(programs.get(1)).get("/api/pieces"))
                                .path("items")
                                .size());
            } finally {
                programs.forEach(RunningJar::close);
            }
        }
    }

    @Test
    void edits_that_do_not_touch_are_all_kept_whichever_process_they_come_through() throws Exception {
        List<String> pieces = List.of(piece("{'title':'Low Water'}"), piece("{'title':'Copper Weather'}"));
        List<Callable<Integer>> writers = new ArrayList<>();
        for (String piece : pieces) {
            for (int i = 0; i < FIELDS.size(); i++) {
                String field = FIELDS.get(i);
                Caller caller = caller(i);
                writers.add(() -> writeField(caller, "/api/pieces/" + piece, field));
            }
        }
        together(writers);
        for (String piece : pieces) {
            JsonNode newest = expect(200, caller(0).get("/api/pieces/" + piece));
            for (String field : FIELDS) {
                assertEquals(
                        field + " " + SAVES, newest.path("content").path(field).asText());
            }
            int last = newest.path("revision").asInt();
            assertEquals(1 + FIELDS.size() * SAVES, last, "one revision a save");
            assertWithoutGaps("/api/pieces/" + piece, last);
        }
    }

    /** Always builds on what this writer saw last; others write beside it. */
    private static int writeField(Caller caller, String path, String field) {
        JsonNode seen = expect(200, caller.get(path));
        for (int save = 1; save <= SAVES; save++) {
            ObjectNode content = seen.path("content").deepCopy();
            content.put(field, field + " " + save);
            seen = expect(200, caller.put(path, seen.path("revision").asInt(), body(content)));
        }
        return seen.path("revision").asInt();
    }

    @Test
    void edits_of_the_same_words_are_told_and_no_accepted_one_is_lost() throws Exception {
        String path = "/api/pieces/" + piece("{'title':'Fen Road'}");
        Set<String> accepted = new TreeSet<>();
        ConcurrentLinkedQueue<String> told = new ConcurrentLinkedQueue<>();
        List<Callable<List<String>>> writers = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            int number = i;
            writers.add(() -> writeTitle(caller(number), path, "writer " + number, told));
        }
        together(writers).forEach(accepted::addAll);
        assertEquals(4 * SAVES, accepted.size());
        assertTrue(!told.isEmpty(), "writers did get into each other's way");
        int last = expect(200, caller(0).get(path)).path("revision").asInt();
        assertEquals(1 + accepted.size(), last);
        assertWithoutGaps(path, last);
        Set<String> kept = new TreeSet<>();
        for (int number = 2; number <= last; number++) {
            kept.add(expect(200, caller(number).get(path + "/revisions/" + number))
                    .path("title")
                    .asText());
        }
        assertEquals(accepted, kept);
    }

    private static List<String> writeTitle(
            Caller caller, String path, String writer, ConcurrentLinkedQueue<String> told) {
        List<String> accepted = new ArrayList<>();
        JsonNode seen = expect(200, caller.get(path));
        while (accepted.size() < SAVES) {
            ObjectNode content = seen.path("content").deepCopy();
            String title = writer + " save " + accepted.size();
            content.put("title", title);
            Said said = caller.put(path, seen.path("revision").asInt(), body(content));
            if (said.status() == 412) {
                assertEquals(
                        "/problems/edited-meanwhile", said.json().path("type").asText());
                told.add(title);
                seen = expect(200, caller.get(path));
                continue;
            }
            seen = expect(200, said);
            accepted.add(title);
        }
        return accepted;
    }

    /** A starting point takes its followers along while they are being saved themselves, and linked to, through the other. */
    @Test
    void a_starting_point_and_its_followers_saved_crosswise_end_in_no_deadlock() throws Exception {
        String piece = piece("{'title':'Slow Air'}");
        String settings = "'settings':{'straight':{'on':true,'parameters':{'level':1}},'slot':'A1','notes':''}";
        String start = expect(201, caller(0).post("/api/recipes", "{'content':{'title':'Everyday'," + settings + "}}"))
                .path("id")
                .asText();
        List<String> followers = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            String follower = "{'title':'Follower " + i + "','piece':'" + piece + "','follows':{'id':'" + start
                    + "'},'settings':{'slot':'B" + i + "'}}";
            followers.add(expect(201, caller(i).post("/api/recipes", "{'content':" + follower + "}"))
                    .path("id")
                    .asText());
        }
        List<Callable<Integer>> writers = new ArrayList<>();
        writers.add(() -> editUntilDone(caller(0), "/api/recipes/" + start, "/straight/parameters", "level"));
        for (int i = 0; i < followers.size(); i++) {
            Caller caller = caller(i + 1);
            String path = "/api/recipes/" + followers.get(i);
            writers.add(() -> editUntilDone(caller, path, "", "notes"));
        }
        together(writers);
        int last = expect(200, caller(0).get("/api/recipes/" + start))
                .path("revision")
                .asInt();
        assertEquals(1 + SAVES, last);
        for (String follower : followers) {
            JsonNode newest = expect(200, caller(1).get("/api/recipes/" + follower));
            assertEquals(
                    "" + SAVES, newest.path("content").at("/settings/notes").asText());
            assertEquals(last, newest.path("content").at("/follows/revision").asInt(), "it followed to the end");
            assertWithoutGaps(
                    "/api/recipes/" + follower, newest.path("revision").asInt());
        }
    }

    private static int editUntilDone(Caller caller, String path, String below, String field) {
        for (int save = 1; save <= SAVES; ) {
            JsonNode seen = expect(200, caller.get(path));
            ObjectNode content = seen.path("content").deepCopy();
            ObjectNode holder = content.withObject("/settings" + below);
            if (field.equals("level")) {
                holder.put(field, save + 1);
            } else {
                holder.put(field, "" + save);
            }
            Said said = caller.put(path, seen.path("revision").asInt(), body(content));
            assertTrue(said.status() == 200 || said.status() == 412, said.status() + " " + said.text());
            save += said.status() == 200 ? 1 : 0;
        }
        return SAVES;
    }

    @Test
    void the_same_new_sheet_sent_to_both_at_once_is_kept_once() throws Exception {
        for (int round = 0; round < 10; round++) {
            String body = "{'id':'" + UUID.randomUUID() + "','content':{'title':'Sent twice " + round + "'}}";
            for (Said said : together(List.<Callable<Said>>of(
                    () -> caller(0).post("/api/pieces", body), () -> caller(1).post("/api/pieces", body)))) {
                assertEquals(1, expect(201, said).path("revision").asInt());
            }
        }
        Set<String> titles = new TreeSet<>();
        JsonNode found = expect(200, caller(0).get("/api/pieces?q=sent+twice"));
        found.path("items").forEach(item -> titles.add(item.path("title").asText()));
        assertEquals(10, titles.size());
        assertEquals(10, found.path("items").size());
    }

    @Test
    void the_example_opened_at_both_at_once_is_written_once() throws Exception {
        List<RunningJar> programs = startTogether(PostgresServer.emptyDatabase());
        try {
            List<Integer> statuses = together(programs.stream()
                    .<Callable<Integer>>map(program -> () -> openExample(Caller.of(program)))
                    .toList());
            assertEquals(Set.of(201, 409), Set.copyOf(statuses));
        } finally {
            programs.forEach(RunningJar::close);
        }
    }

    /** Where one is slow to write it, the other is told that others are saving. */
    private static int openExample(Caller caller) {
        Said said = caller.post("/api/example", "{}");
        while (said.status() == 503) {
            assertEquals("/problems/busy", said.json().path("type").asText());
            said = caller.post("/api/example", "{}");
        }
        return said.status();
    }

    @Test
    void a_share_made_at_one_opens_at_the_other_until_it_is_closed_at_either() {
        String recipe = expect(
                        201, caller(0).post("/api/recipes", "{'content':{'title':'Harbour light','settings':{}}}"))
                .path("id")
                .asText();
        JsonNode share =
                expect(201, caller(0).post("/api/shares", "{'kind':'recipes','id':'" + recipe + "','revision':1}"));
        String page = "/s/" + share.path("token").asText();
        for (Caller caller : both) {
            Said opened = caller.get(page);
            assertEquals(200, opened.status());
            assertTrue(opened.text().contains("Harbour light"));
        }
        Said closed = caller(1).delete("/api/shares/" + share.path("id").asText());
        assertEquals(204, closed.status());
        assertEquals(404, caller(0).get(page).status());
        assertEquals(404, caller(1).get(page).status());
    }

    @Test
    void what_one_remembers_it_makes_again_when_the_other_has_saved() {
        String recipe = expect(
                        201, caller(0).post("/api/recipes", "{'content':{'title':'Harbour light','settings':{}}}"))
                .path("id")
                .asText();
        String page = "/s/"
                + expect(201, caller(0).post("/api/shares", "{'kind':'recipes','id':'" + recipe + "'}"))
                        .path("token")
                        .asText();
        both.forEach(caller -> assertTrue(caller.get(page).text().contains("Harbour light")));
        expect(200, caller(1).put("/api/recipes/" + recipe, 1, "{'content':{'title':'Harbour dusk','settings':{}}}"));
        both.forEach(caller -> assertTrue(caller.get(page).text().contains("Harbour dusk")));
    }

    @Test
    void whoever_signed_in_at_one_is_known_at_the_other_until_they_sign_out() throws Exception {
        PostgresServer.Address database = PostgresServer.emptyDatabase();
        setPassphrase(database, "four strings and a bow");
        List<RunningJar> programs =
                together(List.of(() -> RunningJar.servePublicly(database), () -> RunningJar.servePublicly(database)));
        try {
            String first = programs.get(0).address();
            String second = programs.get(1).address();
            Said entered = new Caller(first, "").form("/sign-in", "name=owner&passphrase=four+strings+and+a+bow");
            assertEquals(303, entered.status(), entered::text);
            String cookie = entered.whole()
                    .headers()
                    .firstValue("Set-Cookie")
                    .orElseThrow()
                    .split(";")[0];
            assertEquals(401, new Caller(second, "").get("/api/pieces").status());
            assertEquals(200, new Caller(second, cookie).get("/api/pieces").status());
            new Caller(second, cookie).form("/sign-out", "");
            assertEquals(401, new Caller(first, cookie).get("/api/pieces").status());
        } finally {
            programs.forEach(RunningJar::close);
        }
    }

    private static void setPassphrase(PostgresServer.Address database, String words)
            throws IOException, InterruptedException {
        Process process = RunningJar.on(database, "passphrase")
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        process.getOutputStream().write((words + "\n").getBytes(StandardCharsets.UTF_8));
        process.getOutputStream().close();
        assertEquals(0, process.waitFor());
    }
}
