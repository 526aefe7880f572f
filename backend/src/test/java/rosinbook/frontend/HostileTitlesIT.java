package rosinbook.frontend;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Page;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.PageChecks;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** Whatever a player calls a thing is text: it runs nothing, breaks no page and pushes nothing off the screen. */
@ExtendWith(OneBrowser.class)
class HostileTitlesIT {
    enum Title {
        MARKUP("<img src=x onerror=alert(1)>"),
        QUOTES("\"'`><script>alert(1)</script>&lt;"),
        BACKWARDS("\u202Egnitirw sdrawkcab"),
        ENDLESS("x".repeat(200)),
        EMOJI("\uD83C\uDFBB\uD83D\uDC69\uD83C\uDFFD\u200D\uD83C\uDFA4 fiddle");

        private final String text;

        Title(String text) {
            this.text = text;
        }
    }

    private static final List<String> LISTS = List.of(
            "/", "/setlists", "/pieces", "/pieces?by=style", "/recipes", "/rigs", "/log", "/shares", "/new/log");

    @ParameterizedTest
    @EnumSource
    void a_title_is_only_text_on_every_list_and_page(Title title, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.empty();
                Visitor visitor = Visitor.of(notebook, browsers, Screen.PHONE)) {
            List<String> pages = new ArrayList<>(LISTS);
            pages.addAll(write(visitor, title.text));
            for (String path : pages) {
                look(visitor, path, title);
            }
        }
    }

    @ParameterizedTest
    @EnumSource(names = {"MARKUP", "ENDLESS"})
    void a_title_is_only_text_on_a_wide_screen_and_on_a_shared_page(Title title, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.empty();
                Visitor visitor = Visitor.of(notebook, browsers, Screen.DESKTOP)) {
            List<String> pages = write(visitor, title.text);
            look(visitor, "/", title);
            look(visitor, "/rigs", title);
            look(visitor, pages.get(pages.size() - 1), title);
            String set = pages.stream()
                    .filter(path -> path.startsWith("/setlists/"))
                    .findFirst()
                    .orElseThrow()
                    .substring("/setlists/".length());
            JsonNode share = visitor.post("/api/shares", Map.of("kind", "setlists", "id", set, "name", "Again"));
            visitor.page().navigate(share.path("url").asText());
            inspect(visitor.settled(), "the shared page", title);
        }
    }

    private static void look(Visitor visitor, String path, Title title) {
        inspect(visitor.open(path), path, title);
        assertEquals(List.of(), visitor.complaints(), path);
    }

    private static void inspect(Page page, String path, Title title) {
        // Also the values of fields and the choices of selects are read.
        String words = (String) page.evaluate("() => document.body.textContent"
                + " + [...document.querySelectorAll('input, textarea')].map(field => field.value).join(' ')");
        assertTrue(words.contains(title.text), () -> path + " does not show it: " + words);
        assertEquals(0, page.locator("img[src='x']").count(), path);
        assertEquals(0, page.locator("body script").count(), path);
        assertEquals(List.of(), PageChecks.overflowing(page), path);
    }

    /** One sheet of every kind, a share and a name to sign with, all called the same. @return their pages */
    private static List<String> write(Visitor visitor, String title) {
        var strings = Map.of(
                "1", Map.of("note", "E5"),
                "2", Map.of("note", "A4"),
                "3", Map.of("note", "D4"),
                "4", Map.of("note", "G3"));
        Map<String, Object> instrument =
                Map.of("title", title, "strings", strings, "referencePitchHertz", 440, "notes", title);
        var level = Map.of("type", "range", "label", title, "order", 1, "min", 0, "max", 100, "step", 1, "unit", "%");
        Map<String, Object> synth = Map.of(
                "title",
                title,
                "inputs",
                6,
                "sensitivityScale",
                Map.of("min", 0, "max", 100, "step", 1),
                "vocabulary",
                Map.of("straight", Map.of("level", level), "voice", Map.of(), "effects", Map.of()),
                "notes",
                title);
        String instrumentId = id(visitor, "instruments", instrument);
        String synthId = id(visitor, "synths", synth);
        String rig = id(
                visitor,
                "rigs",
                Map.of(
                        "title",
                        title,
                        "date",
                        "2026-11-19",
                        "instrument",
                        Map.of("id", instrumentId),
                        "synth",
                        Map.of("id", synthId),
                        "assignments",
                        Map.of("1", Map.of("input", 1, "sensitivity", 20)),
                        "notes",
                        title));
        String piece = id(
                visitor,
                "pieces",
                Map.of(
                        "title",
                        title,
                        "composer",
                        title,
                        "styles",
                        List.of(title.substring(0, Math.min(50, title.length()))),
                        "meter",
                        "4/4",
                        "key",
                        "D",
                        "notes",
                        title));
        String recipe = id(
                visitor,
                "recipes",
                Map.of(
                        "title", title,
                        "piece", piece,
                        "synth", synthId,
                        "settings",
                                Map.of(
                                        "straight",
                                        Map.of("on", true, "parameters", Map.of("level", 50)),
                                        "voices",
                                        Map.of(),
                                        "effects",
                                        Map.of(),
                                        "slot",
                                        "",
                                        "notes",
                                        title)));
        var item = Map.of("order", 1, "piece", piece, "recipe", Map.of("id", recipe), "note", title);
        String set = id(
                visitor,
                "setlists",
                Map.of(
                        "title",
                        title,
                        "date",
                        "2026-11-19",
                        "place",
                        title,
                        "state",
                        "planned",
                        "rig",
                        Map.of("id", rig),
                        "items",
                        Map.of("one", item),
                        "notes",
                        title));
        visitor.write(
                "log",
                Map.of(
                        "date",
                        "2026-11-19",
                        "event",
                        "rehearsal",
                        "text",
                        title,
                        "about",
                        Map.of("rig", Map.of("kind", "rigs", "reference", Map.of("id", rig)))));
        visitor.post("/api/shares", Map.of("kind", "setlists", "id", set, "name", title));
        return List.of(
                "/instruments/" + instrumentId,
                "/synths/" + synthId,
                "/rigs/" + rig,
                "/pieces/" + piece,
                "/recipes/" + recipe,
                "/stage/" + set,
                "/setlists/" + set);
    }

    private static String id(Visitor visitor, String kind, Map<String, Object> content) {
        return visitor.write(kind, content).path("id").asText();
    }
}
