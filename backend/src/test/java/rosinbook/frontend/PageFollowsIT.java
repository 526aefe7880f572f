package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Media;
import com.microsoft.playwright.options.SelectOption;
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
