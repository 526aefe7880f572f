package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.RequestOptions;
import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.store.Database;
import rosinbook.testing.Axe;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.web.Server;

/** A player at the wiring bench, in a browser. */
class WiringBenchIT {
    private static final ObjectMapper JSON = new ObjectMapper();

    /** One pin is known; the other seven are not. */
    private static final String INSTRUMENT =
            """
            {"title": "Borrowed violin",
             "strings": {"1": {"note": "E5"}, "2": {"note": "A4"}, "3": {"note": "D4"}, "4": {"note": "G3"}},
             "connector": {"shape": "round 8-pin", "name": "socket", "pins": {
               "1": {"role": {"carries": "ground"}}, "2": {}, "3": {}, "4": {}, "5": {}, "6": {}, "7": {}, "8": {}}}}
            """;

    private static final String SYNTH =
            """
            {"title": "Rack synth", "inputs": 6, "sensitivityScale": {"min": 0, "max": 50, "step": 1, "customaryStart": 20},
             "connector": {"shape": "round 13-pin", "name": "", "pins": {
               "1": {"role": {"carries": "ground"}},
               "2": {"role": {"carries": "supply", "volts": 7, "maxMilliamps": 20}},
               "3": {"role": {"carries": "mixed"}},
               "4": {"role": {"carries": "string", "string": 1}}, "5": {"role": {"carries": "string", "string": 2}},
               "6": {"role": {"carries": "string", "string": 3}}, "7": {"role": {"carries": "string", "string": 4}},
               "8": {"role": {"carries": "string", "string": 5}}, "9": {"role": {"carries": "string", "string": 6}},
               "10": {"role": {"carries": "control", "line": "source"}}}},
             "controlLines": {"source": {"label": "Source", "minVolts": 0, "maxVolts": 5, "bands": [
               {"fromVolts": 0, "toVolts": 0.6, "meaning": "straight"},
               {"fromVolts": 0.8, "toVolts": 1.3, "meaning": "both sounds"},
               {"fromVolts": 2, "toVolts": 5, "meaning": "synth"}]}}}
            """;

    /** What each pin shows while string 1, 2, 3, 4 is bowed, mV; pins 2 to 5 carry strings 4 to 1, pin 6 all of them. */
    private static final Map<String, int[]> BOWED = Map.of(
            "2", new int[] {2, 2, 3, 41},
            "3", new int[] {2, 3, 44, 3},
            "4", new int[] {3, 38, 3, 2},
            "5", new int[] {46, 3, 2, 2},
            "6", new int[] {21, 20, 22, 19});

    private static Browsers browsers;
    private Database database;
    private Server server;
    private BrowserContext visitor;
    private Page page;
    private final List<String> complaints = new ArrayList<>();

    @BeforeAll
    static void open() {
        browsers = Browsers.open();
    }

    @AfterAll
    static void close() {
        if (browsers != null) {
            browsers.close();
        }
    }

    @BeforeEach
    void serve() {
        database = Database.inMemory("t" + UUID.randomUUID());
        server = Server.start(database, 0, Clock.systemUTC());
    }

    @AfterEach
    void stop() {
        visitor.close();
        server.close();
        database.close();
        assertEquals(List.of(), complaints);
    }

    private void visit(Screen screen) {
        visitor = browsers.visitor(server.address(), screen);
        page = Browsers.strictPage(visitor, complaints);
    }

    private JsonNode create(String kind, String content) throws IOException {
        APIResponse answer = visitor.request()
                .post(
                        "/api/" + kind,
                        RequestOptions.create()
                                .setHeader("Content-Type", "application/json")
                                .setData("{\"content\": " + content + "}"));
        assertEquals(201, answer.status(), answer.text());
        return JSON.readTree(answer.body());
    }

    private JsonNode read(String path) throws IOException {
        return JSON.readTree(visitor.request().get(path).body());
    }

    private Locator mark() {
        return page.locator(".ready-mark");
    }

    private void openStep(String word) {
        page.getByRole(AriaRole.NAVIGATION, new Page.GetByRoleOptions().setName("Steps at the bench"))
                .getByRole(AriaRole.LINK, new Locator.GetByRoleOptions().setName(word))
                .click();
    }

    private void type(Screen screen, String pin, String condition, String spoken, String words) {
        if (screen == Screen.PHONE) {
            page.getByLabel("What is going on while you measure")
                    .selectOption(new com.microsoft.playwright.options.SelectOption().setLabel(condition));
        }
        page.getByLabel("Pin " + pin + ", " + condition.toLowerCase(java.util.Locale.ROOT) + ", " + spoken)
                .fill(words);
    }

    private void measurePins(Screen screen) {
        type(screen, "1", "To ground, all off", "ohms", "0.2");
        for (String pin : List.of("7", "8")) {
            type(screen, pin, "To ground, all off", "ohms", "no");
        }
        for (int string = 1; string <= 4; string++) {
            for (String pin : BOWED.keySet()) {
                type(screen, pin, "String " + string + " bowed", "millivolts AC", "" + BOWED.get(pin)[string - 1]);
            }
            for (String pin : List.of("7", "8")) {
                type(screen, pin, "String " + string + " bowed", "millivolts AC", "0.3");
            }
        }
        for (int pin = 2; pin <= 8; pin++) {
            type(screen, "" + pin, "Nothing played", "millivolts AC", "0.3");
            type(screen, "" + pin, "Nothing played", "volts DC", "0");
        }
    }

    @ParameterizedTest
    @EnumSource(Screen.class)
    void half_known_pins_become_an_adapter_that_is_ready_to_solder(Screen screen) throws IOException {
        visit(screen);
        String instrumentId = create("instruments", INSTRUMENT).get("id").asText();
        create("synths", SYNTH);

        page.navigate("/wiring");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Lay them on the bench"))
                .click();
        page.waitForURL(Pattern.compile(".*/wiring/[0-9a-f-]{36}$"));
        String rigId = page.url().substring(page.url().lastIndexOf('/') + 1);
        assertThat(mark()).containsText("Not judged yet");

        measurePins(screen);
        // All seven: an answer to the readings so far may come between two of them.
        button("Write down 7 likely pins").click();
        assertThat(page.locator(".probe-table")).containsText("written down: string 4");
        assertThat(page.locator(".probe-table")).containsText("written down: mixed signal");

        openStep("Adapter");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("both sounds: 1.05 V"))
                .click();
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Propose an adapter"))
                .click();
        assertThat(mark()).containsText("Ready to solder");
        assertThat(page.locator(".route-list")).containsText("instrument pin 5, string 1 → synth pin 4, input 1");

        Locator string =
                page.locator(".route").filter(new Locator.FilterOptions().setHasText("instrument pin 5, string 1"));
        string.locator("summary").click();
        string.getByLabel(Pattern.compile("^To synth pin")).selectOption("2");
        assertThat(mark()).containsText("Not ready to solder");
        assertThat(string.locator(".findings")).containsText("Unsafe");
        assertThat(string).containsText("is joined to");
        string.getByLabel(Pattern.compile("^To synth pin")).selectOption("4");
        assertThat(mark()).containsText("Ready to solder");

        openStep("Drawing");
        Locator drawing = page.locator(".adapter-drawing svg");
        assertThat(drawing).containsText("MATING SIDE");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(Pattern.compile("^Solder side")))
                .press("Enter");
        assertThat(drawing).containsText("SOLDER SIDE");

        openStep("Meter");
        page.getByLabel("Reading of step 1", new Page.GetByLabelOptions().setExact(true))
                .fill("6.8k");
        assertThat(page.locator(".step").nth(0)).containsText("Good"); // and moves what stands below
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName("Step 2: no connection"))
                .click();
        assertThat(page.locator(".step").nth(1)).containsText("Not as it should be");

        page.getByRole(
                        AriaRole.BUTTON,
                        new Page.GetByRoleOptions().setName("Save").setExact(true))
                .click();
        assertThat(page.locator(".save-bar")).containsText("Saved as revision 2");
        JsonNode instrument = read("/api/instruments/" + instrumentId);
        assertEquals(2, instrument.get("revision").asInt());
        assertEquals(
                "mixed", instrument.at("/content/connector/pins/6/role/carries").asText(), instrument.toString());
        JsonNode rig = read("/api/rigs/" + rigId);
        assertEquals(2, rig.at("/content/instrument/revision").asInt());
        assertEquals(2, rig.at("/content/readings").size(), rig.toString());

        page.reload();
        assertThat(mark()).containsText("Ready to solder");
        page.evaluate(
                "document.querySelectorAll('details').forEach((each) => { each.open = !each.matches('.further'); })");
        assertThat(page.getByLabel("Reading of step 1", new Page.GetByLabelOptions().setExact(true)))
                .hasValue("6.8 k");
        assertEquals(List.of(), Axe.serious(page));
        if (screen == Screen.PHONE) {
            assertEquals(List.of(), tooSmallForAThumb(), "targets are 44 px or more");
        }
        assertEquals(0, page.evaluate("Math.max(0, document.documentElement.scrollWidth - innerWidth)"));
    }

    private Object tooSmallForAThumb() {
        return page.evaluate(
                """
                [...document.querySelectorAll('.leaf :is(button, select, input, summary, a.button)')]
                  .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 43.5)
                  .map((each) => `${each.outerHTML.slice(0, 120)} ${each.getBoundingClientRect().height}`)
                """);
    }

    @Test
    void pins_are_moved_with_arrow_keys_and_seen_mirrored_from_the_solder_side() throws IOException {
        visit(Screen.DESKTOP);
        JsonNode instrument = create("instruments", INSTRUMENT);
        JsonNode synth = create("synths", SYNTH);
        JsonNode rig = create(
                "rigs",
                "{\"title\": \"Bench\", \"instrument\": {\"id\": " + instrument.get("id") + "}, \"synth\": {\"id\": "
                        + synth.get("id") + "}}");
        page.navigate("/wiring/" + rig.get("id").asText());
        openStep("Drawing");
        page.getByText("Where the pins sit").click();
        Locator pin = page.getByRole(
                        AriaRole.GROUP, new Page.GetByRoleOptions().setName("Instrument: places of the pins"))
                .getByRole(AriaRole.BUTTON)
                .first();
        pin.press("ArrowRight");
        pin.press("ArrowUp");
        assertThat(pin).hasAttribute("aria-label", "Pin 1, ground, at middle 5, top 85");
        pin.press("ArrowRight");
        pin.press("ArrowRight");
        pin.press("ArrowRight");
        assertThat(pin).hasAttribute("aria-label", "Pin 1, ground, at right 20, top 85");
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(Pattern.compile("^Solder side")))
                .click();
        assertThat(pin).hasAttribute("aria-label", "Pin 1, ground, at left 20, top 85");
        page.keyboard().press("Control+s");
        assertThat(page.locator(".save-bar")).containsText("Saved as revision 2");
        JsonNode kept = read("/api/instruments/" + instrument.get("id").asText());
        assertEquals(0.2, kept.at("/content/connector/pins/1/x").asDouble());
        assertEquals(0.85, kept.at("/content/connector/pins/1/y").asDouble());
    }

    @Test
    void the_bench_sheet_on_paper_has_boxes_rings_in_words_and_cautions() throws IOException {
        visit(Screen.DESKTOP);
        page.navigate("/wiring/" + exampleRig());
        assertThat(mark()).containsText("Ready to solder");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(com.microsoft.playwright.options.Media.PRINT));
        Locator sheet = page.locator(".bench-sheet");
        assertThat(sheet).isVisible();
        assertThat(page.locator(".save-bar")).isHidden();
        assertThat(page.locator("#adapter")).isHidden();
        assertThat(sheet).containsText("violet, green, black, brown, brown");
        assertThat(sheet).containsText("Never bridge supply rails");
        assertEquals(2, sheet.locator("svg").count());
        assertTrue(sheet.locator(".box").count() > 20);
    }

    /** @return id of a rig of the example that has an adapter */
    private String exampleRig() throws IOException {
        visitor.request()
                .post(
                        "/api/example",
                        RequestOptions.create()
                                .setHeader("Content-Type", "application/json")
                                .setData("{}"));
        JsonNode rigs = read("/api/rigs");
        String rigId = "";
        for (JsonNode rig : rigs.get("items")) {
            rigId = rig.get("content").has("adapter") ? rig.get("id").asText() : rigId;
        }
        return rigId;
    }

    private Locator button(String name) {
        return page.getByRole(
                AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    @Test
    void a_reading_that_cannot_be_read_is_told_and_gives_way_to_the_one_before() throws IOException {
        visit(Screen.DESKTOP);
        page.navigate("/wiring/" + exampleRig());
        assertThat(mark()).containsText("Ready to solder");
        openStep("Meter");
        Locator step = page.locator(".step").first();
        Locator reading = step.locator("input");
        String before = reading.inputValue();
        reading.focus();
        page.keyboard().press("Control+A");
        page.keyboard().type("12 mOhm");
        assertThat(reading).hasAttribute("aria-invalid", "true");
        reading.blur();
        assertThat(step.locator(".unsafe"))
                .hasText("“12 mOhm” was not taken: write ohms, such as 220 or 4.7k, or “no” for no connection.");
        assertThat(reading).hasValue(before);

        openStep("Pins");
        Locator pin = page.getByLabel("Pin 2, string 1 bowed, millivolts AC");
        before = pin.inputValue();
        pin.focus();
        page.keyboard().press("Control+A");
        page.keyboard().type("12 mV");
        pin.blur();
        assertThat(page.locator(".probe .unsafe:not(:empty)"))
                .hasText("String 1 bowed: “12 mV” was not taken; write a number of millivolts, 100 000 at most.");
        assertThat(pin).hasValue(before);
        assertThat(button("Save")).isDisabled();
    }

    @Test
    void a_proposal_that_comes_late_leaves_what_was_written_meanwhile() throws IOException {
        visit(Screen.DESKTOP);
        page.navigate("/wiring/" + exampleRig());
        assertThat(mark()).containsText("Ready to solder");
        openStep("Adapter");
        page.getByText("Propose one from both sockets").click();
        int routes = page.locator(".route").count();
        List<Route> held = new ArrayList<>();
        page.route("**/api/bench/adapter", held::add);
        button("Propose anew").dblclick();
        assertThat(page.getByText("Really replace")).isVisible();
        page.getByText("Really replace").click();
        page.waitForCondition(() -> !held.isEmpty());
        assertThat(button("Propose anew")).isDisabled();
        button("Another route").click();
        assertThat(page.locator(".route")).hasCount(routes + 1);
        held.get(0).resume();
        assertThat(page.locator(".proposal .unsafe")).containsText("what you wrote stays");
        assertThat(page.locator(".route")).hasCount(routes + 1);
        assertEquals(1, held.size(), "a double click asks nothing of the bench");
    }

    @Test
    void what_is_not_judged_yet_is_called_so_on_paper_too_and_is_not_taken_along() throws IOException {
        visit(Screen.PHONE);
        page.navigate("/wiring/" + exampleRig());
        assertThat(mark()).containsText("Ready to solder");
        openStep("Adapter");
        button("Another route").click();
        Locator route = page.locator(".route:has(> details[open])");
        route.getByLabel(Pattern.compile("^What stands between")).selectOption("switch");
        Locator second = route.getByLabel("Word beside this position").nth(1);
        second.fill("on");
        second.press("Tab");
        assertThat(route).containsText("Another position is called “on”");
        second.fill("middle");
        second.press("Tab");
        assertThat(route.locator(".position .unsafe")).hasText(new String[] {"", ""});
        route.getByLabel(Pattern.compile("^What stands between")).selectOption("divider");
        route.getByLabel(Pattern.compile("^To synth pin")).selectOption("10");
        route.getByRole(AriaRole.BUTTON, new Locator.GetByRoleOptions().setName(Pattern.compile("^Divides")))
                .click();
        route.getByLabel("Divides", new Locator.GetByLabelOptions().setExact(true))
                .selectOption("");
        String lacking = "Say which supply pin is divided.";
        assertThat(mark()).containsText("Not judged yet");
        assertThat(mark()).containsText(lacking);
        openStep("Paper");
        assertThat(button("Netlist for SPICE")).isDisabled();
        openStep("Meter");
        assertThat(page.locator(".meter-plan > .unsafe")).containsText(lacking);
        openStep("Drawing");
        assertThat(page.locator("#drawing")).containsText("The drawing leaves that out.");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(com.microsoft.playwright.options.Media.PRINT));
        Locator paper = page.locator(".bench-sheet");
        assertThat(paper.locator(".mark")).containsText("Not judged yet: Route");
        assertThat(paper.locator(".mark")).containsText(lacking);
        assertThat(paper.locator("caption").first()).isVisible();
        assertThat(paper.locator("svg").first()).isHidden();
        assertThat(paper.locator(".boxes")).isHidden();
    }

    @Test
    void a_check_that_failed_is_asked_again_when_the_player_says_so() throws IOException {
        visit(Screen.PHONE);
        List<String> asked = new ArrayList<>();
        page.route("**/api/bench/*", route -> {
            asked.add(route.request().url().replaceAll(".*/", ""));
            route.abort();
        });
        page.navigate("/wiring/" + exampleRig());
        assertThat(mark()).containsText("out of reach");
        page.locator("#pins > summary").click();
        type(Screen.PHONE, "2", "To ground, all off", "ohms", "0.2");
        assertThat(page.locator(".probe-table")).containsText("out of reach");
        page.waitForTimeout(1000);
        assertEquals(1, asked.stream().filter("probe"::equals).count(), "it does not ask for ever");

        page.unroute("**/api/bench/*");
        page.locator(".probe-table").getByText("Try again").click();
        assertThat(page.locator(".probe-table")).containsText("written down:");
        assertThat(page.locator(".probe-table")).not().containsText("out of reach");
        page.locator(".ready-mark + button").click();
        assertThat(mark()).containsText("Ready to solder");
        assertThat(page.locator(".ready-mark + button")).isHidden();
    }
}
