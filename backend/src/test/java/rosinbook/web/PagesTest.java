package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
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

    /** RFC 8246: what never changes under its address is not asked for again. */
    @Test
    void a_page_names_files_that_a_browser_may_keep_and_the_page_itself_is_asked_for_again() {
        Answer page = api.get("/pieces").expect(200);
        assertEquals("no-cache", page.header("Cache-Control"));
        Matcher named =
                Pattern.compile("src=\"(/edition/[0-9a-f]{12})(/app\\.js)\"").matcher(page.text());
        assertTrue(named.find(), page.text());
        Answer kept = api.get(named.group(1) + named.group(2)).expect(200);
        assertEquals("private, max-age=31536000, immutable", kept.header("Cache-Control"));
        assertArrayEquals(api.get("/app.js").expect(200).bytes(), kept.bytes());
        assertFalse(page.text().replaceAll("\"/edition/[^\"]*\"", "").matches("(?s).*\\.(js|css)\".*"), page.text());

        Answer ofBefore = api.get("/edition/0123456789ab/app.js").expect(200);
        assertEquals("no-cache", ofBefore.header("Cache-Control"), "of an edition that is gone");
        api.get(named.group(1) + "/nothing.js").expect(404);
    }

    /** An address from the root would leave the edition, and be asked for again on every page. */
    @Test
    void files_name_each_other_by_relative_addresses() throws IOException {
        Pattern fromRoot =
                Pattern.compile("(?:import|from|import\\(|url\\(|stylesheet\\()\\s*['\"`]/[^'\"`]*\\.(?:js|css)");
        List<String> strays = new ArrayList<>();
        try (Stream<Path> files = Files.walk(Path.of("../frontend"))) {
            for (Path file : files.filter(each -> each.toString().matches(".*\\.(js|css)"))
                    .toList()) {
                Matcher stray = fromRoot.matcher(Files.readString(file));
                while (stray.find()) {
                    strays.add(file + ": " + stray.group());
                }
            }
        }
        assertEquals(List.of(), strays);
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
    void every_page_of_the_frontend_has_an_address_here_and_no_other_has() throws IOException {
        Matcher place = Pattern.compile("\\[\\s*'(/[^']*)', '[a-z-]+', '[a-z]+'],")
                .matcher(Files.readString(Path.of("../frontend/places-rules.js")));
        int pages = 0;
        while (place.find()) {
            String address = place.group(1).replace(":kind", "rigs").replaceAll(":[a-zA-Z]+", "4f6c2b1e-77");
            assertEquals(200, api.get(address).expect(200).status(), address);
            pages++;
        }
        assertTrue(pages > 30, pages + " pages");
        for (String nowhere : List.of(
                "/gear",
                "/print/rigs/4f6c",
                "/rigs/4f6c/log",
                "/instruments",
                "/synths",
                "/log/4f6c",
                "/shares/4f6c",
                "/exercise/4f6c",
                "/new/takes",
                "/compare/shares/4f6c",
                "/people/4f6c")) {
            assertTrue(api.get(nowhere).expect(404).text().contains("app.js"), nowhere + " has the page that says so");
        }
    }

    @Test
    void search_engines_are_asked_to_stay_away() {
        assertEquals(
                List.of("User-agent: *", "Allow: /s/", "Allow: /join/", "Disallow: /"),
                api.get("/robots.txt").expect(200).text().lines().toList());
    }

    private Answer ifNoneMatch(String path, String known) {
        return api.send(api.to(path).header("If-None-Match", known));
    }

    /** RFC 9110, section 13.1.2: a list, compared weakly, or a star. */
    @Test
    void a_file_that_is_known_under_any_of_several_names_is_not_sent_again() {
        String etag = api.get("/app.js").header("ETag");
        String opaque = etag.replaceFirst("^W/", "");
        for (String known : List.of(etag, opaque, "\"x\", " + etag, "\"x\" ,W/\"y\"," + opaque + ", \"z\"", "*")) {
            assertEquals(etag, ifNoneMatch("/app.js", known).expect(304).header("ETag"), known);
        }
        for (String other : List.of("\"x\"", "W/\"x\", \"y\"", "x", ",", opaque.replace("\"", ""))) {
            ifNoneMatch("/app.js", other).expect(200);
        }
    }

    /** RFC 9110, section 13.2.1: a condition counts only where the answer without it would be a success. */
    @Test
    void a_page_that_is_not_there_is_not_there_though_its_shell_is_known() {
        String shell = api.get("/pieces").header("ETag");
        ifNoneMatch("/recipes", shell).expect(304);
        ifNoneMatch("/nonsense", shell).expect(404);
    }

    /** RFC 9110, sections 12.5.5 and 8.8.3.3: what is sent depends on Accept-Encoding, and one strong ETag names one form. */
    @Test
    void compressed_and_plain_are_told_apart_by_caches() {
        Answer plain = api.get("/app.js").expect(200);
        Answer packed =
                api.send(api.to("/app.js").header("Accept-Encoding", "gzip")).expect(200);
        assertEquals("gzip", packed.header("Content-Encoding"));
        for (Answer answer : List.of(plain, packed, api.get("/api/pieces"), api.get("/"), api.get("/nothing.js"))) {
            assertEquals("Accept-Encoding", answer.header("Vary"));
        }
        assertTrue(plain.header("ETag").startsWith("W/\""), plain.header("ETag"));
    }
}
