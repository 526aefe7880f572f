package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
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
import rosinbook.testing.PageChecks;
import rosinbook.testing.Reading;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** Several players, each with a browser of their own: invited, let in, told what they may, and out again. */
@ExtendWith(OneBrowser.class)
class PeopleIT {
    private static final String RIG = "Green violin into the stage synth";
    private static final String ADAS = "four strings and a bow";
    private static final String MIRAS = "a quiet bow at night";
    private static final String READING_ONLY = "You may read this notebook, not write in it. Ask Ada.";

    private ServedNotebook notebook;

    @BeforeEach
    void open() {
        notebook = ServedNotebook.hosted("Ada", ADAS);
    }

    @AfterEach
    void close() {
        notebook.close();
    }

    @ParameterizedTest
    @EnumSource
    void a_newcomer_is_invited_reads_and_once_let_in_writes(Screen screen, Browsers browsers) {
        try (Visitor ada = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor mira = Visitor.of(notebook, browsers, screen)) {
            signIn(ada, "Ada", ADAS);
            join(mira, invite(ada, "Mira"));
            assertThat(mira.page().locator("h1")).hasText("A blank page");
            letIn(ada, "Mira", "may read");

            openNotebook(mira, "Rosinbook");
            Page page = openRig(mira);
            assertThat(page.locator(".masthead .reading-mark")).hasText("reading only");
            assertThat(words(mira)).hasText(READING_ONLY);
            assertThat(mira.button("Save")).hasCount(0);
            assertThat(mira.button("Share")).hasCount(0);
            assertThat(mira.link("Log a rehearsal")).hasCount(0);
            assertWellMade(mira, screen);
            mira.open("/new/rigs");
            assertThat(page.locator("h1")).hasText("Reading only");

            openRig(mira);
            mira.button("Sensitivity of string 1: more").click();
            assertThat(words(mira)).hasText("Not saved. " + READING_ONLY + " Kept on this device.");
            mira.button("Try again").click();
            assertThat(words(mira)).hasText("Not saved. " + READING_ONLY + " Kept on this device.");
            assertEquals(17, sensitivity(ada));

            ada.open("/people");
            ada.page().getByLabel("What Mira may").selectOption("write");
            assertThat(ada.page().locator("#status-line")).hasText("Mira may write now.");
            mira.button("Try again").click();
            assertThat(words(mira)).hasText("Saved as revision 10.");
            assertThat(page.locator(".masthead .reading-mark")).hasCount(0);
            assertEquals(18, sensitivity(ada));
            assertEquals("Mira", ada.sheet("rigs", RIG).path("savedBy").asText());
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void whoever_may_write_no_more_keeps_what_was_typed(Screen screen, Browsers browsers) {
        try (Visitor ada = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor mira = Visitor.of(notebook, browsers, screen)) {
            signIn(ada, "Ada", ADAS);
            join(mira, invite(ada, "Mira"));
            letIn(ada, "Mira", "may write");
            openNotebook(mira, "Rosinbook");
            mira.open("/new/log");
            mira.page().getByLabel("What happened").fill("The D buzzes");
            openRig(mira);
            assertThat(mira.page().locator(".masthead .reading-mark")).hasCount(0);
            mira.button("Sensitivity of string 1: more").click();
            ada.open("/people");
            ada.page().getByLabel("What Mira may").selectOption("read");
            assertThat(ada.page().locator("#status-line")).hasText("Mira may read now.");

            mira.button("Save").click();
            assertThat(words(mira)).hasText("Not saved. " + READING_ONLY + " Kept on this device.");
            assertThat(mira.page().locator(".masthead .reading-mark")).hasText("reading only");
            mira.page().reload();
            assertThat(mira.spinbutton("Sensitivity of string 1")).hasValue("18");
            assertEquals(17, sensitivity(ada));

            mira.open("/new/log");
            assertThat(mira.page().getByLabel("What happened")).hasValue("The D buzzes");
            openRig(mira);
            assertThat(mira.link("the rehearsal you began to write down")).isVisible();
            mira.open("/log");
            assertThat(mira.link("A rehearsal with " + RIG)).isVisible();
            assertThat(mira.page().locator(".log-entry").first()).isVisible();
            assertThat(mira.button("Write a line")).hasCount(0);
            assertThat(mira.page().locator(".log-entry").first().getByText("edit"))
                    .isHidden();
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void each_tab_keeps_its_notebook_and_drafts_stay_with_theirs(Screen screen, Browsers browsers) {
        try (Visitor ada = Visitor.of(notebook, browsers, screen)) {
            signIn(ada, "Ada", ADAS);
            openRig(ada);
            ada.button("Sensitivity of string 1: more").click();
            Page other = ada.page().context().newPage();
            other.navigate("/people");
            other.getByLabel("A new notebook").fill("Ceilidh band");
            other.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Start it"))
                    .click();
            assertThat(other.locator("h1")).hasText("A blank page");
            assertThat(other.locator(".open-notebook a")).containsText("Ceilidh band");
            assertThat(other.locator(".waiting")).isEmpty();

            ada.button("Save").click();
            assertThat(words(ada)).hasText("Saved as revision 10.");
            ada.open("/rigs");
            assertThat(ada.page().locator(".open-notebook a")).containsText("Rosinbook");
            assertThat(ada.page().locator("a.line").first()).containsText(RIG);
            other.navigate("/rigs");
            assertThat(other.locator(".masthead .open-notebook a")).containsText("Ceilidh band");
            assertThat(other.getByText(RIG)).hasCount(0);

            other.navigate("/people");
            other.getByLabel("Another name for the one that is open").fill("Ceilidh and céilí");
            other.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Rename"))
                    .click();
            assertThat(other.locator(".open-notebook a")).containsText("Ceilidh and céilí");
            other.getByText("More", new Page.GetByTextOptions().setExact(true)).click();
            other.getByText("Take along, bring in").first().click();
            String address = other.getByRole(
                            AriaRole.LINK, new Page.GetByRoleOptions().setName("Take everything along"))
                    .getAttribute("href");
            assertTrue(address.matches("/api/export\\?notebook=[0-9a-f-]{36}"), address);
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void whoever_signs_in_after_somebody_else_in_one_tab_finds_their_own_notebook(Screen screen, Browsers browsers) {
        try (Visitor ada = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor tablet = Visitor.of(notebook, browsers, screen)) {
            signIn(ada, "Ada", ADAS);
            signIn(tablet, "Ada", ADAS);
            openRig(tablet);
            join(tablet, invite(ada, "Mira"));

            assertThat(tablet.page().locator("h1")).hasText("A blank page");
            assertThat(tablet.page().locator("#status-line"))
                    .hasText("The notebook of this tab is not open to you any more. This is “Mira's notebook”.");
            tablet.open("/rigs");
            assertThat(tablet.page().locator(".trouble")).hasCount(0);
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void a_sign_in_that_was_ended_elsewhere_loses_nothing(Screen screen, Browsers browsers) {
        try (Visitor desk = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor ada = Visitor.of(notebook, browsers, screen)) {
            signIn(desk, "Ada", ADAS);
            signIn(ada, "Ada", ADAS);
            openRig(ada);
            ada.button("Sensitivity of string 1: more").click();
            desk.open("/people");
            assertThat(desk.page().getByText("this one")).hasCount(1);
            desk.button("End all others").click();
            desk.button("Really end all others?").click();
            assertThat(desk.page().locator("#status-line")).hasText("You are signed in here and nowhere else.");

            ada.button("Save").click();
            assertThat(words(ada)).hasText("Not saved: your sign-in has ended. Kept on this device.");
            assertThat(ada.page().locator(".signed-out")).containsText("What you wrote is still here");
            assertEquals(List.of(), Axe.serious(ada.page()));
            Locator door = ada.page()
                    .locator(".save-bar")
                    .getByRole(AriaRole.LINK, new Locator.GetByRoleOptions().setName("sign in (opens a new tab)"));
            Page beside = ada.page().context().waitForPage(door::click);
            fillIn(beside, "Ada", ADAS);
            beside.close();
            ada.button("Try again").click();

            assertThat(words(ada)).hasText("Saved as revision 10.");
            assertThat(ada.page().locator(".signed-out")).hasCount(0);
            assertEquals(18, sensitivity(ada));
            ada.open("/people");
            ada.button("Sign out").click();
            assertThat(ada.page()).hasTitle("Sign in: Rosinbook");
            ada.page().navigate("/rigs");
            assertThat(ada.page()).hasTitle("Sign in: Rosinbook");
        }
    }

    /** As a browser says that it brings a page back as it was, without asking the server. */
    private static final String BROUGHT_BACK =
            "() => dispatchEvent(new PageTransitionEvent('pageshow', { persisted: true }))";

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void what_was_shown_before_signing_out_is_not_shown_to_who_goes_back(Screen screen, Browsers browsers) {
        try (Visitor ada = Visitor.of(notebook, browsers, screen)) {
            signIn(ada, "Ada", ADAS);
            openRig(ada);
            ada.page().evaluate("() => { window.isSame = true; }");
            ada.page().evaluate(BROUGHT_BACK);
            assertEquals(true, ada.settled().evaluate("() => window.isSame === true"));
            Page other = ada.page().context().newPage();
            other.navigate("/people");
            other.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Sign out"))
                    .click();
            assertThat(other).hasTitle("Sign in: Rosinbook");
            ada.page().evaluate(BROUGHT_BACK);
            assertThat(ada.page()).hasTitle("Sign in: Rosinbook");
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void a_forgotten_passphrase_is_chosen_anew_and_a_closed_account_opens_nothing(Screen screen, Browsers browsers) {
        try (Visitor ada = Visitor.of(notebook, browsers, screen);
                Visitor mira = Visitor.of(notebook, browsers, Screen.DESKTOP)) {
            signIn(ada, "Ada", ADAS);
            String first = invite(ada, "Mira");
            join(mira, first);
            mira.page().navigate(first);
            assertThat(mira.page().locator("p").first()).containsText("was used or is out of date");
            ada.open("/people");
            assertThat(row(ada, "Mira")).containsText("has joined");
            assertWellMade(ada, screen);
            ada.button("Passphrase forgotten by Mira").dblclick();
            String second = link(ada);
            assertFalse(second.equals(first), "a link of its own");
            mira.page().navigate(second);
            fillIn(mira.page(), "", "a loud bow by daylight");
            signIn(mira, "Mira", "a loud bow by daylight");

            changePassphrase(mira, "not what it was before", MIRAS);
            assertThat(mira.page().locator(".passphrase .unsafe")).containsText("not your passphrase");
            changePassphrase(mira, "a loud bow by daylight", MIRAS);
            assertThat(mira.page().locator("#status-line")).containsText("Your passphrase is changed");

            ada.open("/people");
            ada.button("Close the account of Mira").click();
            Locator asked = ada.page().locator("dialog[open]");
            assertThat(asked).containsText("What Mira wrote stays, under that name.");
            assertEquals(List.of(), Axe.serious(ada.page()));
            asked.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName("Close the account"))
                    .click();
            assertThat(ada.page().locator("#status-line")).hasText("Mira’s account is closed.");
            assertThat(row(ada, "Mira")).hasCount(0);
            assertEquals(
                    List.of("Rosinbook yours open", "Mira's notebook yours Open Mira's notebook"),
                    Reading.lines(ada.open("/people").locator("section").first().locator("li")));
            mira.page().navigate("/people");
            assertThat(mira.page()).hasTitle("Sign in: Rosinbook");
        }
    }

    private static void signIn(Visitor visitor, String name, String passphrase) {
        visitor.page().navigate("/sign-in");
        fillIn(visitor.page(), name, passphrase);
    }

    /** The name is asked for on the sign-in page only. */
    private static void fillIn(Page page, String name, String passphrase) {
        if (!name.isEmpty()) {
            page.getByLabel("Name").fill(name);
        }
        page.getByLabel("Passphrase").fill(passphrase);
        page.locator("button").click();
        page.waitForSelector("main[data-drawn='yes']");
    }

    private static String invite(Visitor keeper, String name) {
        keeper.open("/people");
        keeper.page().getByLabel("Invite a player").fill(name);
        keeper.button("Make the invitation").click();
        return link(keeper);
    }

    private static String link(Visitor keeper) {
        Locator dialog = keeper.page().locator("dialog[open]");
        String link = dialog.getByLabel("The link").inputValue();
        // A week after the evening on which it was made.
        assertThat(dialog).containsText("It opens once, until 26 Nov 2026, 18:0");
        assertEquals(List.of(), Axe.serious(keeper.page()));
        keeper.button("Done").click();
        return link;
    }

    private static void join(Visitor newcomer, String link) {
        newcomer.page().navigate(link);
        fillIn(newcomer.page(), "", MIRAS);
    }

    private static void letIn(Visitor owner, String name, String may) {
        owner.open("/people");
        owner.page().getByLabel("Let somebody in").selectOption(name);
        owner.page().getByLabel("What they may").selectOption(may);
        owner.button("Let in").click();
        assertThat(owner.page().locator("#status-line")).hasText(name + " " + may + " now.");
    }

    /** Opened by hand, whichever was open before. */
    private static void openNotebook(Visitor visitor, String title) {
        Locator door = visitor.button("Open " + title);
        visitor.open("/people");
        if (door.count() > 0) {
            door.click();
            visitor.arriveAt("/");
        }
        assertThat(visitor.page().locator(".open-notebook a")).containsText(title);
    }

    private static void changePassphrase(Visitor visitor, String current, String next) {
        visitor.open("/people");
        visitor.page().getByText("Another passphrase").click();
        visitor.page().getByLabel("Passphrase now").fill(current);
        visitor.page().getByLabel("New passphrase").fill(next);
        visitor.button("Change it").click();
    }

    private static Locator row(Visitor keeper, String name) {
        Locator players = keeper.page()
                .locator("section")
                .filter(new Locator.FilterOptions().setHas(keeper.page().getByLabel("Invite a player")));
        return players.locator("li").filter(new Locator.FilterOptions().setHasText(name));
    }

    private static Page openRig(Visitor visitor) {
        return visitor.open("/rigs/" + visitor.sheet("rigs", RIG).path("id").asText());
    }

    private static Locator words(Visitor visitor) {
        return visitor.page().locator(".save-bar .words");
    }

    private static int sensitivity(Visitor visitor) {
        return visitor.sheet("rigs", RIG)
                .path("content")
                .at("/assignments/1/sensitivity")
                .asInt();
    }

    private static void assertWellMade(Visitor visitor, Screen screen) {
        Page page = visitor.settled();
        assertEquals(List.of(), Axe.serious(page));
        assertEquals(List.of(), PageChecks.overflowing(page));
        assertEquals(List.of(), screen == Screen.PHONE ? PageChecks.smallTargets(page) : List.of());
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        assertEquals(List.of(), Axe.serious(page, "color-contrast"));
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.LIGHT));
    }
}
