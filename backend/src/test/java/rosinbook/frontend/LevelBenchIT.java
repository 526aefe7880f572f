package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Request;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.FilePayload;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.store.Database;
import rosinbook.testing.Axe;
import rosinbook.testing.Browsers;
import rosinbook.web.Server;

/** The level bench in a real browser: from the recording to the rig's new revision. */
class LevelBenchIT {
    private static final Pattern OF_AN_UPLOAD = Pattern.compile(".*/api/bench/levels/[0-9a-f-]{36}(\\?.*)?");
    private static final Path RECORDING = Path.of("src/test/resources/published/levels/reel.wav");

    private final Browsers browsers = Browsers.open();
    private final Database database = Database.inMemory("t" + UUID.randomUUID());
    private final Server server = Server.start(database, 0, Clock.systemUTC());
    private final List<String> complaints = new ArrayList<>();

    @AfterEach
    void close() {
        server.close();
        database.close();
        browsers.close();
    }

    @ParameterizedTest
    @EnumSource
    void a_recording_becomes_a_new_revision_of_the_rig(Browsers.Screen screen) {
        Page page = benchOf(screen);
        page.locator("#level-file").setInputFiles(RECORDING);

        Locator leaks = page.locator(".leak-map svg");
        // The truth beside the recording: string 1 reaches input 2 at -24 dB.
        assertThat(leaks).containsText("−24");
        assertThat(page.locator(".trigger-windows .window")).hasCount(4);
        assertThat(page.locator(".stroke")).hasCount(12);
        assertThat(page.locator(".level-advice .assumed")).hasCount(4);
        assertThat(page.locator(".cautions")).containsText("NIOSH");
        assertEquals(List.of(), Axe.serious(page));

        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Apply to the rig"))
                .click();
        assertThat(page.locator(".applied")).containsText("revision 2");
        page.locator(".applied a").last().click();
        assertThat(page.locator("main")).containsText("trigger windows");
        assertThat(page.locator("main")).containsText("measured ");
        assertEquals(List.of(), complaints);
    }

    @Test
    void a_stroke_is_put_right_by_keyboard_and_measured_again() {
        Page page = benchOf(Browsers.Screen.DESKTOP);
        List<String> measured = new ArrayList<>();
        page.onRequest(request -> {
            if (request.method().equals("POST")
                    && OF_AN_UPLOAD.matcher(request.url()).matches()) {
                measured.add(path(request));
            }
        });
        page.locator("#level-file").setInputFiles(RECORDING);
        Locator first = page.locator(".stroke > button").first();
        first.focus();
        page.keyboard().press("Enter");
        Locator start = page.getByRole(AriaRole.SLIDER).first();
        double before = Double.parseDouble(start.getAttribute("aria-valuenow"));
        start.focus();
        page.keyboard().press("ArrowRight");
        assertEquals(before + 0.05, Double.parseDouble(start.getAttribute("aria-valuenow")), 1e-3);
        page.locator(".stroke-editor select").nth(1).selectOption("loud");
        // A second recording that arrived but could not be measured leaves the strokes of the first.
        page.route(OF_AN_UPLOAD, Route::abort);
        page.locator("#level-file").setInputFiles(RECORDING);
        assertThat(page.locator(".bench-state h2")).hasText("The notebook is out of reach");
        page.unroute(OF_AN_UPLOAD);
        page.waitForRequest(
                request -> request.method().equals("POST") && measured.get(0).equals(path(request)),
                () -> page.getByRole(
                                AriaRole.BUTTON,
                                new Page.GetByRoleOptions().setName("Measure again with these strokes"))
                        .click());
        assertThat(page.locator(".stroke > button").first())
                .hasAttribute("aria-label", Pattern.compile("string 1, loud"));
        assertThat(page.locator(".verdict")).isVisible();
        assertEquals(List.of(), complaints);
    }

    @Test
    void a_reading_that_is_no_number_is_named_and_all_are_there_after_a_reload() {
        Page page = benchOf(Browsers.Screen.DESKTOP);
        List<String> asked = new ArrayList<>();
        page.onRequest(request -> {
            if (request.method().equals("POST")) {
                asked.add(path(request));
            }
        });
        page.getByText("Type a meter’s readings instead").click();
        for (int string = 1; string <= 4; string++) {
            for (String loudness : List.of("soft", "medium", "loud")) {
                cell(page, string, loudness, string).fill("−20");
            }
        }
        cell(page, 2, "soft", 2).fill("−20 or so");
        page.getByLabel("Noise on input 1").fill("−70");
        Locator told = page.locator(".meter .unsafe");
        button(page, "Work from these readings").click();
        assertThat(told).hasText("Write a number, such as −20.5, or nothing: “−20 or so” for String 2 soft, input 2.");
        assertThat(cell(page, 2, "soft", 2)).hasAttribute("aria-invalid", "true");
        assertEquals(List.of(), asked);

        page.reload();
        assertThat(cell(page, 2, "soft", 2)).hasValue("−20 or so");
        assertThat(cell(page, 4, "loud", 4)).hasValue("−20");
        cell(page, 2, "soft", 2).fill("−20");
        button(page, "Work from these readings").click();
        assertThat(page.locator(".bench-state")).hasText("Measured.");
        assertThat(told).hasText("Worked out without the noise: it is not read on every input.");
        button(page, "Throw the readings away").click();
        button(page, "Really throw them away?").click();
        page.getByText("Type a meter’s readings instead").click();
        assertThat(cell(page, 4, "loud", 4)).hasValue("");
        assertEquals(List.of(), complaints);
    }

    private static Locator cell(Page page, int string, String loudness, int input) {
        return page.getByLabel("String " + string + " " + loudness + ", input " + input);
    }

    private static Locator button(Page page, String name) {
        return page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name));
    }

    @Test
    void of_two_files_only_the_one_that_was_brought_last_is_told_about() {
        Page page = benchOf(Browsers.Screen.DESKTOP);
        List<Route> held = new ArrayList<>();
        page.route(Pattern.compile(".*/api/bench/levels\\?.*name=first.*"), held::add);
        page.locator("#level-file").setInputFiles(new FilePayload("first.wav", "audio/wav", new byte[] {1}));
        page.waitForCondition(() -> !held.isEmpty());
        page.locator("#level-file").setInputFiles(Path.of("src/test/resources/published/levels/README.md"));
        assertThat(page.locator(".bench-state h2")).hasText("This recording cannot be read");
        page.waitForResponse(response -> response.url().contains("first.wav"), () -> held.get(0)
                .fulfill(new Route.FulfillOptions()
                        .setStatus(422)
                        .setBody("{\"type\":\"/problems/late\",\"title\":\"Told too late\",\"status\":422}")));
        page.evaluate("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        assertThat(page.locator(".bench-state h2")).hasText("This recording cannot be read");
    }

    @Test
    void a_file_that_is_no_recording_is_told_so() {
        Page page = benchOf(Browsers.Screen.DESKTOP);
        page.locator("#level-file").setInputFiles(Path.of("src/test/resources/published/levels/README.md"));
        assertThat(page.locator(".bench-state h2")).hasText("This recording cannot be read");
        assertTrue(page.locator(".results").textContent().isEmpty());
    }

    private static String path(Request request) {
        return request.url().replaceAll("\\?.*", "");
    }

    private Page benchOf(Browsers.Screen screen) {
        BrowserContext visitor = browsers.visitor(server.address(), screen);
        Page page = Browsers.strictPage(visitor, complaints);
        page.navigate("/robots.txt");
        Object rig = page.evaluate(
                """
                async () => {
                  const make = async (kind, content) => (await (await fetch(`/api/${kind}`, {
                    method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify({ content }),
                  })).json()).id;
                  const strings = Object.fromEntries(['E5', 'A4', 'D4', 'G3'].map((note, index) => [index + 1, { note }]));
                  const instrument = await make('instruments', { title: 'Green violin', strings });
                  const synth = await make('synths', { title: 'Stage synth', inputs: 4, sensitivityScale: { min: 0, max: 50, step: 1, customaryStart: 22 } });
                  const assignments = Object.fromEntries([1, 2, 3, 4].map((input) => [input, { input, sensitivity: 22 }]));
                  return make('rigs', { title: 'Green violin into the stage synth', instrument: { id: instrument }, synth: { id: synth }, assignments });
                }""");
        page.navigate("/levels");
        page.locator("a.line").click();
        assertThat(page).hasURL(server.address() + "levels/" + rig);
        return page;
    }
}
