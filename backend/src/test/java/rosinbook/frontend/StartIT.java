package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.testing.Axe;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** The first minutes with a notebook in which nothing is written. */
@ExtendWith(OneBrowser.class)
class StartIT {
    @ParameterizedTest
    @EnumSource
    void an_empty_notebook_says_one_sentence_and_has_two_doors(Screen screen, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.empty();
                Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");

            String opening = page.locator(".opening").textContent();
            assertEquals(opening.length() - 1, opening.indexOf('.'), opening);
            assertEquals(
                    List.of("Start my own", "Open the example"),
                    page.locator("main").locator("a, button").allTextContents());
            assertThat(page.getByText("Start my own")).isInViewport();
            assertThat(page.getByText("Open the example")).isInViewport();
            assertEquals(List.of(), Axe.serious(page));
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void a_new_sheet_is_thrown_away_after_a_question_and_leaves_an_empty_one(Screen screen, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.empty();
                Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            for (String kind : List.of("instruments", "synths")) {
                Page page = visitor.open("/new/" + kind);
                visitor.button("What do you call it?").click();
                page.getByLabel("Name").fill("Borrowed");
                visitor.button("Throw away").dblclick();
                assertThat(visitor.button("Really throw away?")).isVisible();
                visitor.open("/");
                assertThat(visitor.link("Borrowed")).isVisible();

                visitor.open("/new/" + kind);
                visitor.button("Throw away").click();
                visitor.button("Really throw away?").click();
                visitor.button("What do you call it?").click();
                page.getByLabel("Name").fill("My own");
                page.reload();
                assertThat(page.locator("h1")).hasText("My own");
                assertThat(visitor.button("Throw away")).isVisible();

                // What an earlier release left behind.
                page.evaluate(
                        """
                        (kind) => {
                          localStorage.clear();
                          localStorage.setItem(`rosinbook.draft.${kind}.7c9e6679-7425-40de-944b-e07fc1f90ae7`, JSON.stringify({ format: 1, kind,
                            id: '7c9e6679-7425-40de-944b-e07fc1f90ae7', baseRevision: 0, base: null, content: { title: 'Named only' },
                            extra: {}, reason: '', touchedAt: '2026-11-19T17:00:00.000Z', wanted: false }));
                        }""",
                        kind);
                page.reload();
                assertThat(page.locator("h1")).hasText("Named only");
                assertThat(visitor.button("Throw away")).isVisible();
                page.evaluate("() => localStorage.clear()");
            }
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void what_was_begun_is_never_turned_into_what_the_address_asks_for(Screen screen, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.withExample();
                Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            JsonNode pieces = visitor.read("/api/pieces").path("items");
            JsonNode sets = visitor.read("/api/setlists").path("items");
            JsonNode instruments = visitor.read("/api/instruments").path("items");
            for (List<String> each : List.of(
                    List.of(
                            "/new/recipes?piece=",
                            id(pieces, 0),
                            id(pieces, 1),
                            title(pieces, 1),
                            "For: ",
                            title(pieces, 0)),
                    List.of(
                            "/new/setlists?from=",
                            id(sets, 0),
                            id(sets, 1),
                            title(sets, 1),
                            "Begins with: ",
                            title(sets, 0)),
                    List.of(
                            "/new/rigs?instrument=",
                            id(instruments, 0),
                            id(instruments, 1),
                            title(instruments, 1),
                            "Instrument: ",
                            title(instruments, 0)))) {
                Page page = visitor.open(each.get(0) + each.get(1));
                if (page.locator("h1 input").count() == 0) {
                    page.locator("h1 button").click();
                }
                page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true))
                        .fill("Begun");
                assertThat(page.locator(".leaf")).not().containsText("as you left it");
                visitor.open(each.get(0) + each.get(2));
                assertThat(page.getByText("as you left it")).containsText(each.get(3));
                assertThat(page.locator("dl.facts button:has-text('" + each.get(4) + "')"))
                        .containsText(each.get(5));
            }
        }
    }

    private static String id(JsonNode sheets, int index) {
        return sheets.get(index).path("id").asText();
    }

    private static String title(JsonNode sheets, int index) {
        return sheets.get(index).path("title").asText();
    }

    @ParameterizedTest
    @EnumSource
    void the_example_fills_the_notebook_and_shows_the_next_set(Screen screen, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.empty();
                Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");
            visitor.button("Open the example").click();

            assertThat(page.locator("h1")).hasText("Tannery, second night");
            assertThat(page.locator(".kicker")).hasText("Tonight");
            assertThat(page.locator(".programme > li")).hasCount(9);
            assertEquals(14, visitor.read("/api/pieces").path("items").size());
        }
    }

    @ParameterizedTest
    @EnumSource
    void my_own_notebook_begins_with_instrument_synth_and_rig_by_keyboard_alone(Screen screen, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.empty();
                Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");
            press(page, visitor.link("Start my own"), "Enter");

            visitor.arriveAt("/new/instruments?path=start");
            name(page, "Blue violin");
            press(page, visitor.button("Save and go on"), "Enter");

            visitor.arriveAt("**/new/synths?path=start&instrument=*");
            name(page, "Cellar synth");
            assertEquals(List.of(), Axe.serious(page));
            press(page, visitor.button("Save and go on"), "Space");

            visitor.arriveAt("**/new/rigs?path=start&instrument=*");
            reach(page, visitor.spinbutton("Sensitivity of string 1"));
            page.keyboard().type("41");
            press(page, visitor.button("Save"), "Enter");

            page.waitForURL(Pattern.compile("/rigs/[0-9a-f-]{36}$"));
            JsonNode rig = visitor.read("/api/rigs").path("items").path(0).path("content");
            assertEquals(41, rig.at("/assignments/1/sensitivity").asInt());
            assertEquals(visitor.sheet("instruments", "Blue violin").path("id"), rig.at("/instrument/id"));
            assertEquals(visitor.sheet("synths", "Cellar synth").path("id"), rig.at("/synth/id"));
        }
    }

    private static void name(Page page, String title) {
        press(page, page.locator("h1 button"), "Enter");
        assertThat(page.locator("h1 input")).isFocused();
        page.keyboard().type(title);
        page.keyboard().press("Enter");
        assertThat(page.locator("h1")).hasText(title);
    }

    private static void press(Page page, Locator control, String key) {
        reach(page, control);
        page.keyboard().press(key);
    }

    /** By the Tab key, as far as it takes. */
    private static void reach(Page page, Locator control) {
        assertThat(control).isEnabled();
        boolean isReached = false;
        for (int steps = 0; steps < 120 && !isReached; steps++) {
            page.keyboard().press("Tab");
            isReached = Boolean.TRUE.equals(control.evaluate("element => element === document.activeElement"));
        }
        assertTrue(isReached, () -> "the Tab key never reached " + control);
    }
}
