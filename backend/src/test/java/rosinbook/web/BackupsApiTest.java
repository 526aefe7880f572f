package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.notebook.ContentJson;
import rosinbook.store.Database;
import rosinbook.store.Restore;

class BackupsApiTest {
    private final Api api = new Api();

    @TempDir
    private Path folder;

    @AfterEach
    void stop() {
        api.close();
    }

    @Test
    void one_that_was_made_is_listed_and_restores_to_what_was_saved() throws Exception {
        assertEquals(List.of(), api.get("/api/backups").expect(200).items());
        String id = api.create("pieces", "{'title':'The Heron on the Weir'}").id();
        JsonNode made = api.post("/api/backups", "{}").expect(201).json();
        assertEquals("2026-11-12T20:00:00.123Z", made.path("at").asText());
        Answer listed = api.get("/api/backups").expect(200);
        assertEquals(List.of(made), listed.items());
        assertTrue(listed.json().path("daily").asBoolean());

        Path file = api.backups.resolve(made.path("name").asText());
        assertEquals(Files.size(file), made.path("bytes").asLong());
        Restore.intoFolder(file, folder.resolve("elsewhere"));
        try (Database database = Database.inFolder(folder.resolve("elsewhere"));
                Server server = Server.start(database, 0, Clock.systemUTC())) {
            JsonNode there = ContentJson.parse(java.net
                    .URI
                    .create(server.address() + "api/pieces/" + id)
                    .toURL()
                    .openStream()
                    .readAllBytes());
            assertEquals(api.get("/api/pieces/" + id).json(), there);
        }
    }

    @Test
    void old_ones_go_by_the_rule_and_the_newest_comes_first() {
        for (int day = 0; day < 20; day++) {
            api.post("/api/backups", "{}").expect(201);
            api.clock.pass(Duration.ofDays(1));
        }
        // 12 to 30 November and 1 December: seven days, Sundays 15, 22 and 29 November, and the end of November.
        assertEquals(
                List.of("01", "30", "29", "28", "27", "26", "25", "22", "15"),
                api.get("/api/backups").items().stream()
                        .map(each -> each.path("at").asText().substring(8, 10))
                        .toList());
    }

    @Test
    void without_a_folder_for_them_none_are_made() throws Exception {
        try (Database database = Database.inMemory("without-backups");
                Server server = Server.start(database, 0, Clock.systemUTC())) {
            var client = java.net.http.HttpClient.newHttpClient();
            var request = java.net.http.HttpRequest.newBuilder(java.net.URI.create(server.address() + "api/backups"));
            var listed = client.send(request.build(), java.net.http.HttpResponse.BodyHandlers.ofByteArray());
            assertEquals(
                    ContentJson.parse("{\"items\":[],\"daily\":false}".getBytes()), ContentJson.parse(listed.body()));
            var made = client.send(
                    request.header("Content-Type", "application/json")
                            .POST(java.net.http.HttpRequest.BodyPublishers.ofString("{}"))
                            .build(),
                    java.net.http.HttpResponse.BodyHandlers.ofByteArray());
            Answer answer = Answer.of(made);
            answer.problem(409, "no-backups");
            Description.check("POST", "/api/backups", answer);
        }
    }
}
