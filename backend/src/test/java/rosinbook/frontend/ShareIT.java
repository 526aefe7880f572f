package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import java.net.URI;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.api.io.TempDir;
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

/** A set handed to somebody else, by a link or as a file. */
@ExtendWith(OneBrowser.class)
class ShareIT {
    private static final List<String> TONIGHT = List.of(
            "1 The Silver Spear",
            "2 Star of the County Down",
            "3 The Coolin",
            "4 Copper Weather",
            "5 Harbour Static",
            "6 Low Water at Quillness",
            "7 The Lark in the Clear Air",
            "8 Drowsy Maggie",
            "9 Nine Gates");

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
    @EnumSource
    void a_link_shows_tonights_set_with_every_value_and_nothing_else(Screen screen, Browsers browsers) {
        try (Visitor player = Visitor.of(notebook, browsers, Screen.DESKTOP);
                Visitor friend = Visitor.of(notebook, browsers, screen)) {
            String link = makeLink(player);
            Page page = friend.page();
            List<String> asked = new ArrayList<>();
            page.onRequest(request -> asked.add(URI.create(request.url()).getPath()));
            Response answer = page.navigate(link);
            friend.settled();

            assertThat(page.locator("h1")).hasText("Tannery, second night");
            assertEquals(TONIGHT, Reading.lines(page.locator(".set > li > h2")));
            // The example's recipes.json: the starting point's drive and tone, turned down since last week.
            assertTrue(
                    Reading.line(page.locator(".set > li").nth(3)).contains("Overdrive on · Drive 50 % · Tone 48 %"));
            assertEquals(
                    "1 (E5) 1 17 0 dB",
                    Reading.line(page.locator(".rig tbody tr").first()));
            assertThat(page.locator("a, button, input, select, textarea, form, script, iframe, [contenteditable]"))
                    .hasCount(0);
            assertThat(page.getByText("The Kesh")).hasCount(0);
            asked.remove("/icon.svg"); // which the browser shows on the tab
            assertEquals(List.of(URI.create(link).getPath(), "/styles/share.css"), asked);
            assertEquals("no-referrer", answer.headerValue("referrer-policy"));
            assertEquals("private, no-store", answer.headerValue("cache-control"));
            assertEquals("noindex, nofollow", answer.headerValue("x-robots-tag"));
            assertWellMade(page);
        }
    }

    @ParameterizedTest
    @EnumSource
    void a_link_as_it_is_now_stays_and_one_to_the_newest_follows(Screen screen, Browsers browsers) {
        try (Visitor player = Visitor.of(notebook, browsers, screen);
                Visitor friend = Visitor.of(notebook, browsers, screen)) {
            String exact = makeLink(player);
            String newest = makeLink(player, true);
            Page page = openSet(player);
            player.button("Take out The Coolin").click();
            player.button("Save").click();
            assertThat(page.locator(".save-bar .words")).containsText("Saved as revision");

            friend.page().navigate(exact);
            assertEquals(TONIGHT, Reading.lines(friend.page().locator(".set > li > h2")));
            friend.page().navigate(newest);
            assertThat(friend.page().locator(".set > li")).hasCount(TONIGHT.size() - 1);
            assertThat(friend.page().getByText("The Coolin")).hasCount(0);
        }
    }

    @ParameterizedTest
    @EnumSource
    void a_closed_link_opens_nothing_any_more(Screen screen, Browsers browsers) {
        try (Visitor player = Visitor.of(notebook, browsers, screen);
                Visitor friend = Visitor.of(notebook, browsers, screen)) {
            String link = makeLink(player);
            friend.page().navigate(link);
            player.open("/shares");
            assertThat(player.page().locator(".share-list li")).containsText("opened once");
            player.button("Revoke For Jonas").click();
            player.button("Really close this link for good?").click();
            assertThat(player.page().locator("#status-line")).hasText("“For Jonas” opens nothing any more.");

            Response answer = friend.page().reload();
            assertEquals(404, answer.status());
            assertThat(friend.page().locator("h1")).hasText("This link does not open anything");
            assertFalse(friend.page().content().contains("Tannery"));
            assertEquals(List.of(), Axe.serious(friend.page()));
        }
    }

    @ParameterizedTest
    @EnumSource
    void the_set_as_one_file_opens_without_a_network(Screen screen, Browsers browsers, @TempDir Path folder) {
        Path file = folder.resolve("tonight.html");
        try (Visitor player = Visitor.of(notebook, browsers, screen)) {
            makeLink(player);
            Download download = player.page()
                    .waitForDownload(() -> player.link("Or take it as one file").click());
            download.saveAs(file);
        }
        notebook.stop();
        try (Visitor friend = Visitor.of(notebook, browsers, screen)) {
            Page page = friend.page();
            page.context().setOffline(true);
            List<String> asked = new ArrayList<>();
            page.onRequest(request -> asked.add(request.url()));
            page.navigate(file.toUri().toString());

            assertEquals(TONIGHT, Reading.lines(page.locator(".set > li > h2")));
            assertThat(page.locator("a, button, input, select, textarea, form, script"))
                    .hasCount(0);
            assertEquals(1, asked.size(), asked::toString);
            assertWellMade(page);
        }
    }

    private static void assertWellMade(Page page) {
        assertEquals(List.of(), PageChecks.overflowing(page));
        assertEquals(List.of(), Axe.serious(page));
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        assertEquals(List.of(), Axe.serious(page, "color-contrast"));
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT));
        assertThat(page.locator(".set > li").last()).isVisible();
    }

    private static Page openSet(Visitor player) {
        JsonNode set = player.sheet("setlists", "Tannery, second night");
        return player.open("/setlists/" + set.path("id").asText());
    }

    private static String makeLink(Visitor player) {
        return makeLink(player, false);
    }

    /** Leaves the dialog open in which the link is shown. */
    private static String makeLink(Visitor player, boolean isKeptUpToDate) {
        Page page = openSet(player);
        player.button("Share").click();
        page.getByLabel("Who is it for?").fill("For Jonas");
        if (isKeptUpToDate) {
            page.getByLabel("Always the newest").check();
        }
        player.button("Make the link").click();
        String link = page.getByLabel("The link", new Page.GetByLabelOptions().setExact(true))
                .inputValue();
        page.waitForFunction("() => document.querySelector('img.code').naturalWidth > 0");
        assertEquals(List.of(), Axe.serious(page));
        // 128 bits need 22 characters of 6 bits.
        assertTrue(link.matches("http://127\\.0\\.0\\.1:\\d+/s/[A-Za-z0-9_-]{22,}"), link);
        return link;
    }
}
