package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.BoundingBox;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Contrast;
import com.microsoft.playwright.options.Media;
import com.microsoft.playwright.options.SelectOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** What stands on a page, on paper and in a dialog follows what was written, and says so where it cannot. */
@ExtendWith(OneBrowser.class)
class PageFollowsIT {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String RIG = "Green violin into the stage synth";
    private static final String CONTRAST_OF_OUTLINE =
            """
            (element) => {
              const linear = (byte) => (byte / 255 <= 0.04045 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4);
              const luminance = (colour) => {
                const [red, green, blue] = colour.match(/[\\d.]+/g).map(Number).map(linear);
                return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
              };
              const outline = luminance(getComputedStyle(element).outlineColor);
              const paper = luminance(getComputedStyle(document.documentElement).backgroundColor);
              return (Math.max(outline, paper) + 0.05) / (Math.min(outline, paper) + 0.05);
            }""";

    private static ServedNotebook notebook;
    private Visitor visitor;

    @BeforeAll
    static void serve() {
        notebook = ServedNotebook.withExample();
    }

    @AfterAll
    static void close() {
        notebook.close();
    }

    @BeforeEach
    void visit(Browsers browsers) {
        visitor = Visitor.of(notebook, browsers, Screen.PHONE);
    }

    @AfterEach
    void leave() {
        visitor.close();
    }

    @Test
    void a_new_rig_keeps_what_was_written_when_its_instrument_changes() {
        Page page = visitor.open("/new/rigs");
        page.locator("h1 button").click();
        page.locator("h1 input").fill("The cellar rig");
        page.locator("h1 input").press("Enter");
        visitor.spinbutton("Sensitivity of string 2").fill("41");
        fact(page, "Set on").click();
        page.getByLabel("Set on").fill("2026-10-01");
        page.getByLabel("Set on").press("Enter");
        String other = fact(page, "Instrument").textContent().contains("Five-string") ? "Green violin" : "Five-string";
        fact(page, "Instrument").click();
        page.getByLabel("Instrument").selectOption(new SelectOption().setLabel(other));

        assertThat(page.locator("h1")).hasText("The cellar rig");
        assertThat(visitor.spinbutton("Sensitivity of string 2")).hasValue("41");
        assertThat(fact(page, "Set on")).containsText("1 October 2026");
        visitor.spinbutton("Sensitivity of string 1").fill("1000");
        visitor.spinbutton("Sensitivity of string 1").press("Tab");
        assertThat(visitor.spinbutton("Sensitivity of string 1")).hasValue("100");
        assertThat(page.locator(".stepper .ended")).hasText("The scale ends at 100.");
    }

    @Test
    void a_rig_that_was_saved_elsewhere_is_shared_as_it_is_there_and_thrown_away_words_leave_its_head() {
        JsonNode rig = visitor.post("/api/rigs", Map.of("content", copy("rigs", RIG, "Rig of two hands")));
        String address = "/rigs/" + rig.path("id").asText();
        Page page = visitor.open(address);
        page.locator("h1 button").click();
        page.locator("h1 input").fill("Discarded words");
        page.locator("h1 input").press("Enter");
        assertThat(page.locator("h1")).hasText("Discarded words");
        page.evaluate(
                """
                async (path) => {
                  const content = { ...(await (await fetch(`/api${path}`)).json()).content, notes: 'from the laptop' };
                  const saved = await fetch(`/api${path}`, { method: 'PUT', body: JSON.stringify({ content }),
                    headers: { 'Content-Type': 'application/json', 'If-Match': '"r1"' } });
                  await saved.text();
                }""",
                address);

        page.reload();
        page.waitForSelector("main[data-drawn='yes']");
        visitor.settled();
        visitor.button("Share").click();
        Locator dialog = page.locator(".share-dialog");
        assertThat(dialog).containsText("As it is now (revision 2)");
        assertThat(dialog).containsText("not saved yet is not in it");
        visitor.button("Not now").click();
        visitor.button("Throw away").click();
        visitor.button("Really throw away?").click();
        assertThat(page.locator("h1")).hasText("Rig of two hands");
        visitor.button("Share").click();
        assertThat(dialog).not().containsText("not saved yet");
    }

    @Test
    void the_stage_sheet_on_paper_is_the_set_as_it_stands_on_the_screen() {
        String set = "/setlists/"
                + visitor.sheet("setlists", "Tannery, second night").path("id").asText();
        Page page = visitor.open(set);
        Locator pieces = page.locator(".stage-sheet .piece");
        String second = pieces.locator(".name").nth(1).textContent();
        String itsSlot = pieces.locator(".slot").nth(1).textContent();
        page.locator(".set-items .handle").nth(1).press("ArrowUp");
        assertEquals(second, pieces.locator(".name").nth(0).textContent());
        assertEquals(itsSlot, pieces.locator(".slot").nth(0).textContent());
        int count = pieces.count();
        page.locator(".set-items .take-out").nth(0).press("Enter");
        assertThat(pieces).hasCount(count - 1);
        assertThat(page.locator(".set-items > li").first().locator(".handle")).isFocused();

        visitor.open(set + "?revision=1");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        assertThat(page.locator(".stage-sheet .title")).containsText("revision 1");
        assertThat(pieces.first()).isVisible();
    }

    @Test
    void a_part_of_a_page_that_cannot_be_read_says_so_and_is_read_when_asked_again() {
        String recipe = "/recipes/"
                + visitor.sheet("recipes", "Copper Weather, answering")
                        .path("id")
                        .asText();
        String rig = "/rigs/" + visitor.sheet("rigs", RIG).path("id").asText();
        Page page = visitor.page();
        page.route(Pattern.compile(".*/api/rigs/[^/]+/strings$"), Route::abort);
        visitor.open(rig);
        assertThat(page.getByText("The notebook is out of reach.")).isVisible();
        page.unroute(Pattern.compile(".*/api/rigs/[^/]+/strings$"));
        visitor.button("Try again").click();
        assertThat(page.locator(".string-history")).isVisible();

        String start = visitor.read("/api" + recipe).at("/content/follows/id").asText();
        page.route("**/api/recipes/" + start, Route::abort);
        visitor.open(recipe);
        assertThat(page.locator(".recipe-standing")).containsText("The notebook is out of reach.");
        page.unroute("**/api/recipes/" + start);
        page.locator(".recipe-standing button").click();
        assertThat(page.locator(".recipe-standing")).containsText("On top of");
    }

    @Test
    void another_kind_of_parameter_can_be_taken_back_and_a_name_that_no_key_can_hold_is_not_lost() {
        Page page = visitor.open(
                "/synths/" + visitor.sheet("synths", "Stage synth").path("id").asText());
        page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })");
        Locator row = page.locator(".parameters > li").first();
        String range = row.locator("summary .pencil").textContent();
        row.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("It is: a number"))
                .click();
        row.getByLabel("It is").selectOption("choice");
        assertThat(row.locator("summary .pencil")).hasText("plain");
        assertThat(row).containsText("Words");
        row.getByLabel("It is").press("Escape");
        assertThat(row.locator("summary .pencil")).hasText(range);
        assertThat(row).not().containsText("Words");
        assertThat(row.getByText("a number")).isFocused();

        visitor.open("/recipes/"
                + visitor.sheet("recipes", "Copper Weather, answering")
                        .path("id")
                        .asText());
        page.getByLabel("Put a setting in").first().selectOption(new SelectOption().setLabel("something else …"));
        Locator name = page.getByLabel("Name of the setting");
        name.fill("深さ");
        name.press("Enter");
        assertThat(page.getByText("Only the letters a to z")).isVisible();
        assertThat(name).hasValue("深さ");
        assertThat(name).isFocused();
        name.fill("Depth");
        name.press("Enter");
        assertThat(page.locator(".settings .label").getByText("Depth")).isVisible();
    }

    @Test
    void a_starting_point_asks_about_its_followers_once_and_a_recipe_tells_which_revision_it_follows_now() {
        JsonNode recipe = visitor.sheet("recipes", "Copper Weather, answering");
        List<String> asked = new ArrayList<>();
        visitor.page().onRequest(request -> {
            if (request.url().endsWith("/preview")) {
                asked.add(request.url());
            }
        });
        Page page = visitor.open("/recipes/" + recipe.at("/content/follows/id").asText());
        page.locator("h1 button").click();
        page.locator("h1 input").fill("Everyday, warmer");
        page.locator("h1 input").press("Enter");
        page.keyboard().press("Control+s");
        page.keyboard().press("Control+s");
        Locator dialog = page.locator(".followers-dialog");
        assertThat(dialog.first()).isVisible();
        page.keyboard().press("Control+s");
        visitor.settled();
        assertThat(dialog).hasCount(1);
        assertEquals(1, asked.size());
        dialog.locator("input[value='stay']").evaluateAll("all => all.forEach((each) => { each.checked = true; })");
        visitor.button("Save the starting point").click();
        assertThat(page.locator(".save-bar .words")).containsText("Saved as revision");

        visitor.open("/recipes/" + recipe.path("id").asText());
        Locator standing = page.locator(".recipe-standing");
        assertThat(standing).containsText("has moved on to revision");
        visitor.button("Follow on").click();
        assertThat(standing).not().containsText("has moved on");
        visitor.button("Throw away").click();
        visitor.button("Really throw away?").click();
        assertThat(standing).containsText("has moved on to revision");
    }

    @Test
    void whoever_types_or_listens_knows_where_they_are() {
        Page page = visitor.open("/recipes/"
                + visitor.sheet("recipes", "Copper Weather, answering")
                        .path("id")
                        .asText());
        assertThat(named(page.locator(".straight"), AriaRole.CHECKBOX, "on straight sound"))
                .isVisible();
        assertThat(page.getByLabel("Put a setting in: straight sound")).isVisible();
        Locator voice = page.locator(".layer.keep-together").first();
        assertThat(named(
                        voice,
                        AriaRole.CHECKBOX,
                        "on " + voice.locator("h3 .value").textContent().replaceFirst(".*: ", "")))
                .isVisible();
        visitor.open(
                "/synths/" + visitor.sheet("synths", "Stage synth").path("id").asText());
        page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true; })");
        Locator row = page.locator(".parameters > li").first();
        String parameter = row.locator("summary .name").textContent();
        for (String word : List.of("Up", "Down", "Take out")) {
            assertThat(named(row, AriaRole.BUTTON, word + " " + parameter)).isVisible();
        }

        visitor.open("/log");
        Locator edit = page.locator(".log-entry .writes").first();
        assertThat(edit).hasText(Pattern.compile("edit what was written on \\S+"));
        edit.click();
        assertThat(page.locator(".log-entry-form textarea")).isFocused();

        visitor.open("/rigs/" + visitor.sheet("rigs", RIG).path("id").asText());
        visitor.button("Share").click();
        page.getByLabel("Who is it for?").fill("For the band");
        visitor.button("Make the link").click();
        assertThat(page.getByLabel("The link", new Page.GetByLabelOptions().setExact(true)))
                .isFocused();

        visitor.open("/new/log");
        Locator rig = page.locator(".which-rig select");
        String chosen = rig.inputValue();
        rig.press("ArrowDown");
        assertEquals(chosen, rig.inputValue());
    }

    @Test
    void what_has_the_focus_is_seen_in_any_light_and_more_contrast_is_given_on_stage_too() {
        Page page = visitor.open("/pieces");
        page.keyboard().press("Tab");
        page.keyboard().press("Tab");
        for (ColorScheme light : List.of(ColorScheme.LIGHT, ColorScheme.DARK)) {
            page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(light));
            double contrast = ((Number) page.locator(":focus").evaluate(CONTRAST_OF_OUTLINE)).doubleValue();
            // WCAG 2.2, 1.4.11: 3 to 1 beside what is around it.
            assertTrue(contrast >= 3, light + ": " + contrast);
        }
        visitor.open("/stage/"
                + visitor.sheet("setlists", "Tannery, second night").path("id").asText());
        String pencil = "getComputedStyle(document.documentElement).getPropertyValue('--pencil')";
        Object usual = page.evaluate(pencil);
        page.emulateMedia(new Page.EmulateMediaOptions().setContrast(Contrast.MORE));
        assertNotEquals(usual, page.evaluate(pencil));
        assertEquals(page.evaluate(pencil.replace("pencil", "ink")), page.evaluate(pencil));
    }

    @Test
    void nothing_is_squeezed_away_or_runs_beyond_the_screen() {
        Page page = visitor.page();
        page.setViewportSize(1000, 800);
        visitor.open("/");
        page.locator(".programme .aside")
                .first()
                .evaluate("each => { each.textContent = 'A recipe with a long name, '.repeat(3); }");
        assertTrue(page.locator(".programme .name").first().boundingBox().width > 100);

        page.setViewportSize(800, 360);
        Locator menu = page.locator(".further ul");
        page.locator(".further summary").click();
        assertThat(menu).isVisible();
        assertTrue(bottom(menu) <= 360, () -> "the menu ends at " + bottom(menu));
        page.locator(".find").focus();
        assertThat(menu).isHidden();
        visitor.button("Find").click();
        Locator find = page.locator(".find-dialog");
        assertThat(find).isVisible();
        assertTrue(bottom(find) <= 360, () -> "the search ends at " + bottom(find));
    }

    @Test
    void the_rest_of_a_page_is_there_although_a_part_of_it_cannot_be_read() {
        Page page = visitor.page();
        page.route("**/api/instruments/**", Route::abort);
        visitor.open("/");
        assertThat(page.locator(".programme li").first()).isVisible();
        assertThat(page.locator(".newest-log")).isVisible();
        page.unroute("**/api/instruments/**");
        visitor.button("Try again").click();
        assertThat(page.locator(".rig-tonight h2")).isVisible();

        page.route("**/api/recipes?*", Route::abort);
        visitor.open("/pieces/" + visitor.read("/api/pieces").at("/items/0/id").asText());
        assertThat(page.locator("h1")).isVisible();
        page.unroute("**/api/recipes?*");
        visitor.button("Try again").click();
        assertThat(page.getByText("Recipes for it")).isVisible();

        page.route("**/archive-dialog.js", Route::abort);
        page.locator(".further summary").click();
        visitor.button("Take along, bring in").click();
        assertThat(page.locator("#status-line")).containsText("The notebook is out of reach");
    }

    @Test
    void a_new_piece_that_waits_for_the_notebook_is_not_the_next_new_one_and_can_still_be_read() {
        Page page = visitor.page();
        page.route("**/api/pieces", route -> {
            if (route.request().method().equals("POST")) {
                route.abort();
            } else {
                route.resume();
            }
        });
        visitor.open("/new/pieces");
        page.locator("h1 button, h1 input").first().click();
        page.locator("h1 input").fill("Rain on the platform");
        page.locator("h1 input").press("Enter");
        visitor.button("Save").click();
        assertThat(page.locator(".save-bar .words")).containsText("The notebook is out of reach.");
        visitor.open("/new/pieces");
        page.locator(".waiting").getByText("Rain on the platform").click();
        assertThat(page.locator("h1")).containsText("Rain on the platform");
    }

    private static double bottom(Locator locator) {
        BoundingBox box = locator.boundingBox();
        return box.y + box.height;
    }

    private static Locator named(Locator within, AriaRole role, String name) {
        return within.getByRole(
                role, new Locator.GetByRoleOptions().setName(name).setExact(true));
    }

    private static Locator fact(Page page, String label) {
        return page.locator("dl.facts dt")
                .filter(new Locator.FilterOptions().setHasText(label))
                .locator("+ dd button.value");
    }

    private Object copy(String kind, String title, String newTitle) {
        ObjectNode content = visitor.sheet(kind, title).path("content").deepCopy();
        content.put("title", newTitle);
        return JSON.convertValue(content, Object.class);
    }
}
