package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The files that pages are made of. */
class PagesTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    @Test
    void a_file_is_served_with_its_type_and_is_not_sent_twice() throws IOException {
        Answer styles = api.get("/styles/share.css").expect(200);
        assertEquals("text/css;charset=utf-8", styles.header("Content-Type").replace(" ", ""));
        assertEquals("no-cache", styles.header("Cache-Control"));
        try (var file = PagesTest.class.getResourceAsStream("/frontend/styles/share.css")) {
            assertArrayEquals(file.readAllBytes(), styles.bytes());
        }
        Answer again = api.send(api.to("/styles/share.css").header("If-None-Match", styles.header("ETag")));
        assertEquals(0, again.expect(304).bytes().length);
        Answer head = api.send(api.to("/styles/share.css").method("HEAD", BodyPublishers.noBody()));
        assertEquals(0, head.expect(200).bytes().length);
    }

    @Test
    void nothing_but_the_pages_files_is_served() {
        for (String path : List.of(
                "/openapi.json",
                "/shapes.json",
                "/example/gear.json",
                "/migrations/V001__notebook.sql",
                "/simplelogger.properties",
                "/styles/nothing.css",
                "/META-INF/MANIFEST.MF",
                "/rosinbook/web/Server.class")) {
            Answer answer = api.get(path).expect(404);
            assertFalse(answer.text().contains("CREATE TABLE") || answer.text().contains("3.1.1"), path);
        }
    }

    @Test
    void search_engines_are_asked_to_stay_away() {
        assertTrue(api.get("/robots.txt").expect(200).text().contains("Disallow: /"));
    }
}
