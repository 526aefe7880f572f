package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Download;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.example.ExampleSeason;
import rosinbook.store.Database;
import rosinbook.store.DatabaseSheetStore;
import rosinbook.take.TakeReader;
import rosinbook.testing.Browsers;
import rosinbook.web.Server;

/** The take bench in a browser: bring a take, see its faults, refuse a repair, take it along; and play live. */
class TakeBenchIT {
    /** A MIDI input that the test plays through {@code window.playMidi}. */
    private static final String PRETEND_MIDI =
            """
            (() => {
              const input = { name: 'Pretend input', onmidimessage: null };
              navigator.requestMIDIAccess = async () => ({ inputs: new Map([['1', input]]), onstatechange: null });
              window.playMidi = (data, timeStamp) => input.onmidimessage({ data: Uint8Array.from(data), timeStamp });
            })()""";

    private static Browsers browsers;

    private final List<String> complaints = new ArrayList<>();
    private Database database;
    private Server server;
    private BrowserContext visitor;
    private Page page;

    @BeforeAll
    static void openBrowser() {
        browsers = Browsers.open();
    }

    @AfterAll
    static void closeBrowser() {
        if (browsers != null) {
            browsers.close();
        }
    }

    @BeforeEach
    void open() {
        database = Database.inMemory("t" + UUID.randomUUID());
        Clock clock = Clock.systemUTC();
        ExampleSeason.writeInto(DatabaseSheetStore.onlyNotebook(database, clock.instant()), LocalDate.now(clock));
        server = Server.start(database, 0, clock);
        visit(Browsers.Screen.DESKTOP);
    }

    private void visit(Browsers.Screen screen) {
        if (visitor != null) {
            visitor.close();
        }
        visitor = browsers.visitor(server.address(), screen);
        page = Browsers.strictPage(visitor, complaints);
    }

    @AfterEach
    void close() {
        visitor.close();
        server.close();
        database.close();
        assertEquals(List.of(), complaints);
    }

    private static byte[] published(String name) {
        try (InputStream in = TakeBenchIT.class.getResourceAsStream("/published/takes/" + name)) {
            return in.readAllBytes();
        } catch (IOException problem) {
            throw new AssertionError(problem);
        }
    }

    private void go(String address) {
        page.navigate(address);
        page.waitForSelector("main[data-drawn]");
    }

    private Locator button(String name) {
        return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name));
    }

    private void bring(String name, byte[] bytes) {
        page.locator("#take-file").setInputFiles(new FilePayload(name, "audio/midi", bytes));
    }

    private void bringAndKeep() {
        go("/takes");
        bring("o1_air.mid", published("o1_air.over.mid"));
        page.waitForSelector("#take-title");
        page.locator("#take-title").fill("Air, tried out");
        button("Keep this take").click();
        page.waitForURL("**/takes/*");
        page.waitForSelector(".fault-list li");
    }

    private static byte[] bytes(Download download) {
        try {
            return Files.readAllBytes(download.path());
        } catch (IOException problem) {
            throw new AssertionError(problem);
        }
    }

    private byte[] cleaned() {
        return bytes(page.waitForDownload(() -> page.getByRole(AriaRole.LINK)
                .filter(new Locator.FilterOptions().setHasText("slides as two notes"))
                .click()));
    }

    @Test
    void a_take_is_brought_a_repair_refused_and_the_mended_file_taken_along() {
        bringAndKeep();
        page.locator("summary:has-text('Take it along')").click();
        int mended = TakeReader.GUESSING.read(cleaned()).notes().size();
        page.locator(".which-faults select").selectOption("ghost");
        Locator ghost = page.locator(".fault-list li").first();
        assertTrue(ghost.textContent().contains("Drop the note."), ghost.textContent());
        ghost.getByText("Leave as played").click();
        page.waitForSelector(".fault-list li.refused");
        assertTrue(ghost.textContent().contains("Left as played."));
        assertTrue(page.getByText("save first").isVisible(), "files are made from what is saved");
        button("Save").click();
        page.waitForSelector(".save-bar[data-state=saved]");
        assertEquals(mended + 1, TakeReader.GUESSING.read(cleaned()).notes().size());
        page.reload();
        page.waitForSelector(".fault-list li.refused");
        go(page.url() + "?revision=1");
        assertTrue(page.locator(".leaf").textContent().contains("What has changed since"));
        assertEquals(0, page.locator(".save-bar").count(), "an earlier revision is only looked at");
    }

    @Test
    void a_take_whose_faults_or_rig_cannot_be_read_is_there_and_they_are_read_when_asked_again() {
        bringAndKeep();
        page.route("**/api/bench/takes", Route::abort);
        page.route("**/api/rigs/*/revisions/*", Route::abort);
        page.reload();
        assertThat(page.locator("h1")).containsText("Air, tried out");
        assertThat(button("Play mended")).isDisabled();
        page.unroute("**/api/bench/takes");
        button("Try again").click();
        assertThat(page.locator(".fault-list li").first()).isVisible();
        assertThat(button("Play mended")).isEnabled();
    }

    @Test
    void a_threshold_that_is_moved_counts_at_once() {
        bringAndKeep();
        String before = page.locator(".take-score .string-board").textContent();
        page.locator("summary:has-text('The figures behind it')").click();
        page.locator("summary:has-text('Ghosts')").click();
        Locator slider = page.locator("#threshold-GHOST_START");
        slider.focus();
        page.keyboard().press("Home");
        page.waitForFunction(
                "before => document.querySelector('.take-score .string-board').textContent !== before", before);
        assertEquals("−12", page.locator("output[for=threshold-GHOST_START]").textContent());
        page.locator(".threshold button:visible").click();
        page.waitForFunction(
                "before => document.querySelector('.take-score .string-board').textContent === before", before);
    }

    @Test
    void the_roll_is_walked_by_keyboard_alone() {
        bringAndKeep();
        page.locator(".piano-roll .frame").focus();
        page.keyboard().press("ArrowDown");
        String first = page.locator(".chosen-fault p").textContent();
        page.keyboard().press("ArrowDown");
        String second = page.locator(".chosen-fault p").textContent();
        assertTrue(!first.isEmpty() && !second.equals(first), second);
        page.keyboard().press("r");
        page.getByText("Mend it after all").first().waitFor();
        page.keyboard().press("ArrowUp");
        assertEquals(first, page.locator(".chosen-fault p").textContent());
    }

    @Test
    void what_is_no_midi_is_told_in_place_and_nothing_is_kept() {
        go("/takes");
        bring("song.mid", "not midi".getBytes(StandardCharsets.UTF_8));
        Locator told = page.locator(".looked-at .unsafe");
        told.waitFor();
        assertTrue(told.textContent().contains("byte 0"), told.textContent());
        assertEquals(0, button("Keep this take").count());
    }

    @Test
    void the_rig_page_tells_how_its_faults_moved() {
        go("/rigs");
        page.getByText("Green violin into the stage synth").click();
        Locator moves = page.locator(".takes-of-rig .moves");
        moves.waitFor();
        assertTrue(
                moves.textContent()
                        .contains(
                                "Ghosts on string 1 went from 40 to 3.1 a minute when its sensitivity went from 20 to 16."),
                moves.textContent());
    }

    @Test
    void live_notes_are_judged_as_they_come_and_recorded_into_a_take() {
        visitor.addInitScript(PRETEND_MIDI);
        go("/takes/live");
        page.locator("#live-instrument")
                .selectOption(new com.microsoft.playwright.options.SelectOption().setLabel("Green violin"));
        page.evaluate(
                """
                () => {
                  const given = navigator.requestMIDIAccess;
                  navigator.requestMIDIAccess = () => new Promise((allow, refuse) => {
                    window.refuseMidi = () => (navigator.requestMIDIAccess = given, refuse(new Error('refused')));
                  });
                }""");
        button("Listen").click();
        assertThat(button("Listen")).isDisabled();
        page.evaluate("() => refuseMidi()");
        assertThat(page.getByText("The browser did not allow it.")).isVisible();
        button("Listen").click();
        button("Record").click();
        page.evaluate(
                """
                () => {
                  const at = performance.now();
                  playMidi([0x91, 81, 100], at);
                  playMidi([0x90, 81, 40], at + 20);
                  playMidi([0x80, 81, 0], at + 90);
                  playMidi([0x81, 81, 0], at + 400);
                  playMidi([0xf8], at + 410);
                  playMidi([0x92, 64, 90], at + 420);
                  playMidi([0x82, 64, 0], at + 900);
                }""");
        page.locator(".live-board .flags:has-text('ghost')").waitFor();
        button("Stop").click();
        page.getByText("Only in this browser so far").waitFor();
        page.reload();
        button("Look at it, and keep it").click();
        button("Keep this take").click();
        page.waitForURL(address -> address.matches(".*/takes/[0-9a-f-]{36}"));
        page.locator(".fault-list li").first().waitFor();
        assertTrue(page.locator(".take-score").textContent().contains("3 notes heard"));
        go("/takes/live");
        assertEquals(0, page.getByText("Only in this browser so far").count());
        button("Listen").click();
        button("Record").click();
        List<String> asked = new ArrayList<>();
        page.onDialog(dialog -> {
            asked.add(dialog.type());
            dialog.accept();
        });
        page.reload();
        assertEquals(List.of("beforeunload"), asked, "a recording that runs is not left without a question");
    }

    @Test
    void a_browser_without_midi_is_told_kindly_what_to_do_instead() {
        visitor.addInitScript("delete Navigator.prototype.requestMIDIAccess");
        go("/takes/live");
        assertTrue(page.getByText("This browser cannot listen to MIDI.").isVisible());
        assertTrue(page.getByText("bring the file here").isVisible());
    }

    @Test
    void the_exercise_is_drawn_for_the_instrument_and_a_take_of_it_scored() {
        go("/exercise");
        assertEquals(7, page.locator(".exercise-sheet .passage").count());
        page.locator("#exercise-instrument")
                .selectOption(new com.microsoft.playwright.options.SelectOption().setLabel("Green violin"));
        page.locator(".exercise-sheet .which:text('C3')")
                .first()
                .waitFor(new Locator.WaitForOptions()
                        .setState(com.microsoft.playwright.options.WaitForSelectorState.DETACHED));
        bring("exercise.mid", published("o1_air.reasonable.mid"));
        page.getByText("Against the script:").waitFor();
    }

    @Test
    void what_is_said_about_a_take_stays_while_its_strings_and_the_tempo_change() {
        visit(Browsers.Screen.PHONE);
        go("/exercise");
        bring("exercise.mid", published("o1_air.reasonable.mid"));
        Locator title = page.locator("#take-title");
        title.fill("Slow, with the new bow");
        Locator strings = page.locator("#take-strings");
        String played = strings.inputValue();
        strings.fill("E5, A4, H9");
        strings.press("Tab");
        assertThat(page.locator(".looked-at .unsafe")).containsText("H9");
        assertThat(title).hasValue("Slow, with the new bow");
        strings.fill(played);
        strings.press("Tab");
        assertThat(page.locator(".looked-at .unsafe")).hasText("");

        page.waitForRequest(
                request -> request.url().matches(".*/api/bench/takes.*exercise=62.*"),
                () -> button("Beats a minute: more").click());
        assertThat(page.locator(".leaf")).containsText("at 62 a minute");
        page.route("**/api/exercise?*", Route::abort);
        button("Beats a minute: more").click();
        assertThat(page.locator(".leaf")).containsText("Below is still the script at 62 a minute.");
        page.unroute("**/api/exercise?*");
        button("Try again").click();
        assertThat(page.locator(".leaf")).containsText("at 64 a minute");
        assertThat(page.locator(".leaf")).not().containsText("Below is still");
        assertThat(title).hasValue("Slow, with the new bow");
    }

    @Test
    void what_was_played_live_stays_on_the_page_where_the_browser_keeps_nothing() {
        visit(Browsers.Screen.PHONE);
        visitor.addInitScript(PRETEND_MIDI);
        visitor.addInitScript("indexedDB.open = () => { throw new DOMException('off', 'SecurityError'); };");
        go("/takes/live");
        Locator name = page.getByLabel("Name", new Page.GetByLabelOptions().setExact(true));
        button("Listen").click();
        for (int take = 1; take <= 2; take++) {
            button("Record").click();
            page.evaluate("() => { playMidi([0x90, 81, 90]); playMidi([0x80, 81, 0]); }");
            button("Stop").click();
            assertThat(page.locator(".status-line")).containsText("this browser keeps nothing");
            assertThat(button("Look at it, and keep it")).hasCount(take);
            if (take == 1) {
                button("Look at it, and keep it").click();
                name.fill("Reel, first try");
            }
        }
        assertThat(name).hasValue("Reel, first try");
        button("Throw away").first().click();
        assertThat(button("Really throw away?")).hasCount(1);
        button("Record").focus();
        assertThat(button("Really throw away?")).hasCount(0);
        assertEquals(0, page.getByText("Only in this browser so far").count());
        button("Look at it, and keep it").first().click();
        button("Keep this take").click();
        assertThat(button("Look at it, and keep it")).hasCount(1);
        button("Look at it, and keep it").click();
        button("Keep this take").click();
        page.waitForURL(address -> address.matches(".*/takes/[0-9a-f-]{36}"));
    }

    @Test
    void what_is_thrown_away_leaves_the_page_and_a_tempo_that_is_none_is_told() {
        visit(Browsers.Screen.PHONE);
        bringAndKeep();
        Locator facts = page.locator("dl.facts");
        facts.locator("button:has-text('Rig: ')").click();
        facts.getByLabel("Rig").selectOption("");
        assertThat(page.locator(".lead")).not().containsText("Green violin");
        button("Notes: add a note").click();
        facts.locator("textarea").fill("too many ghosts");
        facts.locator("textarea").blur();
        button("Throw away").click();
        button("Really throw away?").click();
        assertThat(facts).not().containsText("too many ghosts");

        page.locator("summary:has-text('Take it along')").click();
        page.locator("#export-tempo").fill("fast");
        assertThat(page.getByText("Write the quarters a minute as a number")).isVisible();
        assertThat(page.getByText("Sheet music (MusicXML)")).isHidden();
        page.locator("#export-tempo").fill("96,5");
        assertThat(page.getByText("Sheet music (MusicXML)")).hasAttribute("href", Pattern.compile("tempo=96\\.5"));
    }

    @ParameterizedTest
    @EnumSource(Browsers.Screen.class)
    void no_page_of_the_bench_has_serious_barriers(Browsers.Screen screen) throws IOException {
        String axe;
        try (InputStream in =
                TakeBenchIT.class.getResourceAsStream("/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js")) {
            axe = new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
        visit(screen);
        go("/takes");
        String take = page.locator(".ruled a").first().getAttribute("href");
        for (String address : List.of("/takes", take, "/takes/live", "/exercise")) {
            go(address);
            page.locator("details.fold").evaluateAll("all => all.forEach(each => { each.open = true; })");
            page.evaluate(axe);
            Object barriers = page.evaluate(
                    """
                    () => axe.run(document, { preload: false, resultTypes: ['violations'] }).then((result) => result.violations
                      .filter((each) => each.impact === 'serious' || each.impact === 'critical')
                      .map((each) => each.id + ': ' + each.nodes.map((node) => node.html.slice(0, 120)).join(' | ')))""");
            assertEquals(List.of(), barriers, address);
            assertEquals(
                    true,
                    page.evaluate("() => document.documentElement.scrollWidth <= innerWidth"),
                    address + " is wider than the screen");
        }
    }
}
