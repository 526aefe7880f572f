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
