package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.testing.Axe;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.Reading;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** Two people at one rig, and a server that goes away meanwhile: nothing typed is lost. */
@ExtendWith(OneBrowser.class)
class SaveTogetherIT {
    private static final String RIG = "Green violin into the stage synth";

    private ServedNotebook notebook;

    @BeforeEach
    void open() {
        notebook = ServedNotebook.withExample();
    }

    @AfterEach
    void close() {
        notebook.close();
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void edits_of_different_strings_are_both_kept(Screen screen, Browsers browsers) {
        try (Visitor tilde = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor oke = Visitor.of(notebook, browsers, screen)) {
            openRig(tilde);
            openRig(oke);
            tilde.button("Sensitivity of string 1: more").click();
            save(tilde);
            assertThat(words(tilde)).hasText("Saved as revision 10.");
            oke.button("Sensitivity of string 4: less").click();
            save(oke);

            assertThat(words(oke))
                    .hasText("Saved as revision 11. Somebody else had saved meanwhile; both edits are kept.");
            assertEquals(18, sensitivity(tilde, 1));
            assertEquals(31, sensitivity(tilde, 4));
            assertThat(oke.spinbutton("Sensitivity of string 1")).hasValue("18");
            oke.page().getByText("What the other save had changed").click();
            assertEquals(
                    "String 1 sensitivity 17 → 18 (+1)",
                    Reading.line(oke.page().locator(".save-bar .change-list > ul > li")));
        }
    }

    @ParameterizedTest
    @EnumSource
    void two_values_of_one_string_stand_side_by_side_until_one_is_chosen(Screen screen, Browsers browsers) {
        try (Visitor tilde = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor oke = Visitor.of(notebook, browsers, screen)) {
            Page page = disagree(tilde, oke);
            Locator choice =
                    page.getByRole(AriaRole.GROUP).filter(new Locator.FilterOptions().setHasText("Before: 17"));
            assertEquals(List.of("Yours 15", "Saved meanwhile 18"), Reading.lines(choice.locator("label")));
            assertEquals(List.of(), Axe.serious(page));
            assertEquals(18, sensitivity(tilde, 1));

            choice.getByLabel("Saved meanwhile").check();
            oke.button("Keep these and save").click();

            assertThat(words(oke)).containsText("Saved as revision 11.");
            assertEquals(18, sensitivity(tilde, 1));
            assertEquals(25, sensitivity(tilde, 3));
            assertThat(oke.spinbutton("Sensitivity of string 1")).hasValue("18");
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void a_choice_may_wait_and_still_be_for_ones_own(Screen screen, Browsers browsers) {
        try (Visitor tilde = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor oke = Visitor.of(notebook, browsers, screen)) {
            Page page = disagree(tilde, oke);
            oke.button("Decide later").click();
            assertThat(words(oke)).containsText("Nothing is lost: choose which to keep. Kept on this device.");
            assertThat(oke.spinbutton("Sensitivity of string 1")).hasValue("15");
            oke.button("Choose").click();
            page.getByLabel("Yours").check();
            oke.button("Keep these and save").click();

            assertThat(words(oke)).containsText("Saved as revision 11.");
            assertEquals(15, sensitivity(tilde, 1));
            assertEquals(25, sensitivity(tilde, 3));
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void what_is_written_while_the_server_is_away_is_sent_when_it_is_back(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            openRig(visitor);
            notebook.stop();
            visitor.button("Sensitivity of string 1: more").click();
            save(visitor);
            assertThat(words(visitor))
                    .hasText("The notebook is out of reach. Kept on this device."
                            + " It is sent as soon as the notebook answers.");
            visitor.button("Sensitivity of string 1: more").click();
            notebook.startAgain();

            assertThat(words(visitor)).hasText("Saved as revision 10.");
            assertEquals(19, sensitivity(visitor, 1));
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void a_draft_survives_that_the_page_is_loaded_again_while_the_notebook_is_away(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = openRig(visitor);
            page.route("**/api/**", Route::abort);
            visitor.button("Sensitivity of string 2: more").click();
            save(visitor);
            assertThat(words(visitor)).containsText("Kept on this device.");
            page.reload();
            assertThat(page.locator("h2").first()).hasText("The notebook is out of reach");
            page.unroute("**/api/**");
            visitor.open("/");

            assertThat(page.locator("#status-line"))
                    .hasText("1 sheet that waited on this device is in the notebook now.");
            assertEquals(24, sensitivity(visitor, 2));
            assertThat(page.locator(".waiting")).isEmpty();
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void a_draft_that_was_never_sent_is_there_after_the_screen_was_locked(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = openRig(visitor);
            visitor.button("Sensitivity of string 2: less").click();
            page.reload();
            assertThat(visitor.spinbutton("Sensitivity of string 2")).hasValue("22");
            assertThat(words(visitor)).containsText("Not saved yet: your words from 19 Nov 2026, 18:00.");
            assertEquals(23, sensitivity(visitor, 2));
            visitor.open("/");
            assertThat(page.locator(".waiting")).containsText(RIG);
            visitor.link(RIG).last().click();
            visitor.button("Throw away").click();
            visitor.button("Really throw away?").click();

            assertThat(visitor.spinbutton("Sensitivity of string 2")).hasValue("23");
        }
    }

    /** Tilde has saved 18 for string 1; Oke wants 15 there and 25 for string 3, and is asked. */
    private Page disagree(Visitor tilde, Visitor oke) {
        openRig(tilde);
        openRig(oke);
        tilde.button("Sensitivity of string 1: more").click();
        save(tilde);
        assertThat(words(tilde)).hasText("Saved as revision 10.");
        oke.button("Sensitivity of string 1: less").click();
        oke.button("Sensitivity of string 1: less").click();
        oke.button("Sensitivity of string 3: more").click();
        save(oke);
        assertThat(oke.page().locator("dialog[open] h2")).hasText("Which one holds?");
        return oke.page();
    }

    private static Page openRig(Visitor visitor) {
        return visitor.open("/rigs/" + visitor.sheet("rigs", RIG).path("id").asText());
    }

    private static void save(Visitor visitor) {
        visitor.button("Save").click();
    }

    private static Locator words(Visitor visitor) {
        return visitor.page().locator(".save-bar .words");
    }

    private static int sensitivity(Visitor visitor, int string) {
        JsonNode content = visitor.sheet("rigs", RIG).path("content");
        return content.at("/assignments/" + string + "/sensitivity").asInt();
    }
}
