package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Clock;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import com.microsoft.playwright.options.AriaRole;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.testing.Axe;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.Finger;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.Reading;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** After a rehearsal: the last rig, a few steps up or down, a sentence, saved. */
@ExtendWith(OneBrowser.class)
class LogRehearsalIT {
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
    @EnumSource
    void the_last_rig_is_opened_as_it_was_left(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");
            visitor.link("Log a rehearsal").first().click();
            visitor.arriveAt("/new/log");

            assertThat(page.locator(".which-rig option:checked")).hasText(RIG);
            // The example's rigs.json, last step of the violin's rig.
            assertEquals(List.of("17", "23", "24", "32"), sensitivities(visitor));
            assertThat(visitor.button("Write it down")).isDisabled();
            assertEquals(List.of(), Axe.serious(page));
        }
    }

    @ParameterizedTest
    @EnumSource
    void one_save_makes_a_revision_and_a_log_entry_that_points_at_it(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            JsonNode before = visitor.sheet("rigs", RIG);
            Page page = visitor.open("/new/log");
            visitor.button("Sensitivity of string 1: more").click();
            visitor.button("Sensitivity of string 1: more").click();
            visitor.button("Sensitivity of string 4: less").click();
            visitor.spinbutton("Sensitivity of string 2").focus();
            page.keyboard().press("ArrowDown");
            page.getByText("singing", new Page.GetByTextOptions().setExact(true))
                    .click();
            page.getByLabel("What happened").fill("E speaks without being asked twice");
            assertThat(page.locator(".save-bar .words")).containsText("Kept on this device");
            visitor.button("Write it down").click();

            assertThat(page.locator("h1")).hasText("Written down");
            JsonNode rig = visitor.sheet("rigs", RIG);
            assertEquals(
                    before.path("revision").asInt() + 1, rig.path("revision").asInt());
            assertEquals(List.of(19, 22, 24, 31), sensitivities(rig));
            JsonNode entry = visitor.read("/api/log?limit=1").at("/items/0/content");
            assertEquals(
                    "E speaks without being asked twice", entry.path("text").asText());
            assertEquals("singing", entry.path("felt").asText());
            assertEquals("2026-11-19", entry.path("date").asText());
            JsonNode about = entry.path("about").elements().next();
            assertEquals(rig.path("id"), about.at("/reference/id"));
            assertEquals(rig.path("revision"), about.at("/reference/revision"));
            assertEquals(
                    "String 1 sensitivity 17 → 19 (+2)",
                    Reading.line(page.locator(".change-list > ul > li").first()));
            visitor.link("The log").click();
            assertThat(page.getByText("E speaks without being asked twice")).isVisible();
            assertThat(page.locator(".log-entry").first()).containsText(", revision " + rig.path("revision"));
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void a_rehearsal_that_waits_on_this_device_is_found_again_and_written_down(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/new/log");
            page.getByLabel("What happened").fill("The low C speaks late");
            visitor.open("/");
            visitor.link("A rehearsal with " + RIG).click();
            visitor.arriveAt(
                    "/new/log?rig=" + visitor.sheet("rigs", RIG).path("id").asText());
            assertThat(page.getByLabel("What happened")).hasValue("The low C speaks late");
            visitor.open("/wiring/" + visitor.sheet("rigs", RIG).path("id").asText());
            visitor.link("the rehearsal you began to write down").click();
            assertThat(page.getByLabel("What happened")).hasValue("The low C speaks late");

            page.route("**/api/rigs/*", Route::abort);
            visitor.button("Write it down").click();
            assertThat(page.locator(".save-bar .words")).containsText("The notebook is out of reach.");
            page.unroute("**/api/rigs/*");
            assertThat(page.locator("h1")).hasText("Written down");
            assertEquals(
                    "The low C speaks late",
                    visitor.read("/api/log?limit=1").at("/items/0/content/text").asText());
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void what_is_typed_while_it_is_written_down_goes_into_the_same_entry(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            int entries = visitor.read("/api/log?limit=200").path("items").size();
            Page page = visitor.open("/new/log");
            Locator text = page.getByLabel("What happened");
            List<Route> held = new ArrayList<>();
            text.fill("The D");
            page.route("**/api/rigs/*", held::add);
            visitor.button("Write it down").click();
            page.waitForCondition(() -> !held.isEmpty());
            text.fill("The D buzzes");
            page.unroute("**/api/rigs/*");
            held.get(0).resume();
            assertThat(page.locator("#status-line")).containsText("Written down, but for what you typed meanwhile");
            assertThat(text).hasValue("The D buzzes");
            visitor.button("Write it down").click();

            assertThat(page.locator("h1")).hasText("Written down");
            JsonNode log = visitor.read("/api/log?limit=200").path("items");
            assertEquals(entries + 1, log.size());
            assertEquals("The D buzzes", log.at("/0/content/text").asText());
            assertEquals(2, log.at("/0/revision").asInt());
            visitor.link("The log").click();
            assertThat(page.getByText("The D buzzes")).isVisible();

            page.locator(".log-entry").first().getByText("edit").click();
            page.route("**/api/log/*", held::add);
            text.fill("The D buzzes, the G");
            visitor.button("Write it down").click();
            page.waitForCondition(() -> held.size() > 1);
            text.fill("The D buzzes, the G not");
            page.unroute("**/api/log/*");
            held.get(1).resume();
            assertThat(page.locator("#status-line")).containsText("Written down, but for what you typed meanwhile");
            assertThat(text).hasValue("The D buzzes, the G not");
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void the_rig_and_the_log_get_the_same_day_and_half_a_day_is_none(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            String id = visitor.sheet("rigs", RIG).path("id").asText();
            for (int rig = 0; rig < 50; rig++) {
                visitor.write(
                        "rigs",
                        Map.of(
                                "title", "Rig " + rig,
                                "instrument",
                                        Map.of(
                                                "id",
                                                visitor.sheet("instruments", "Five-string")
                                                        .path("id")
                                                        .asText()),
                                "synth",
                                        Map.of(
                                                "id",
                                                visitor.sheet("synths", "Stage synth")
                                                        .path("id")
                                                        .asText())));
            }
            Page page = visitor.open("/new/log?rig=" + id);
            assertThat(page.locator(".which-rig option:checked")).hasText(RIG);
            page.getByLabel("What happened").fill("Yesterday");
            Locator day = page.getByLabel("Day", new Page.GetByLabelOptions().setExact(true));
            page.locator(".occasion button:has-text('Day: ')").click();
            day.fill("2026-11-18");
            day.blur();
            visitor.button("Write it down").click();
            assertThat(page.locator("h1")).hasText("Written down");
            JsonNode rig = visitor.read("/api/rigs/" + id);
            assertEquals("2026-11-18", rig.at("/content/date").asText());
            assertEquals(
                    "2026-11-18",
                    visitor.read("/api/log?q=Yesterday")
                            .at("/items/0/content/date")
                            .asText());

            visitor.open("/rigs/" + id);
            Locator date = page.locator("dl.facts").getByLabel("Set on");
            page.locator("dl.facts button:has-text('Set on: ')").click();
            date.press("Backspace");
            assertThat(page.locator("dl.facts .unsafe")).hasText("Write the whole day, or none.");
            date.blur();
            assertThat(page.locator("dl.facts button:has-text('Set on: ')")).containsText("18 November 2026");
            assertThat(visitor.button("Save")).isDisabled();
        }
    }

    @ParameterizedTest
    @EnumSource(names = "PHONE")
    void the_log_has_one_open_line_and_shows_the_entry_that_is_asked_for(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            JsonNode old = visitor.read("/api/log?limit=200").path("items");
            String oldest = old.get(old.size() - 1).path("id").asText();
            for (int entry = 0; entry < 50; entry++) {
                visitor.write("log", Map.of("date", "2026-11-18", "event", "practice", "text", "Scales " + entry));
            }
            Page page = visitor.open("/log#" + oldest);
            assertThat(page.locator("[id='" + oldest + "']")).isInViewport();

            visitor.button("Write a line").click();
            visitor.button("Write a line").click();
            page.keyboard().press("Control+s");
            assertThat(page.locator(".save-bar .words")).hasText("Write what happened, or how it felt.");
            page.getByLabel("What happened").fill("New rosin");
            page.locator(".log-entry-form").getByText("good").click();
            visitor.open("/log");
            assertThat(page.getByLabel("What happened")).hasValue("New rosin");
            page.locator(".log-entry").first().getByText("edit").click();
            assertThat(page.locator(".log-entry-form")).hasCount(2);
            page.locator(".log-entry-form").last().getByText("rough").click();
            assertThat(page.locator(".log-entry-form").first().getByLabel("good"))
                    .isChecked();

            visitor.button("Find").click();
            page.getByPlaceholder("Find in the notebook").fill("Scales 3");
            page.locator("dialog[open] a").first().click();
            assertThat(page.locator("dialog[open]")).hasCount(0);
            page.route("**/api/log?**", Route::abort);
            visitor.button("Earlier").click();
            assertThat(page.locator("#status-line")).hasText("The notebook is out of reach.");
        }
    }

    @ParameterizedTest
    @EnumSource
    void a_stepper_goes_on_while_it_is_held_and_stops_when_it_is_let_go(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/new/log");
            page.clock().install();
            Locator more = visitor.button("Sensitivity of string 3: more");
            more.scrollIntoViewIfNeeded();
            Finger finger = screen == Screen.PHONE ? Finger.onGlass(more) : Finger.onMouse(more);
            finger.press();
            // The first repeat after 420 ms, the next ones every 130 ms.
            page.clock().runFor(1000);
            finger.lift();
            String held = value(visitor, 3);
            page.clock().runFor(5000);

            assertTrue(Integer.parseInt(held) >= 24 + 5, held);
            assertEquals(held, value(visitor, 3));
            more.press("Enter");
            assertEquals(Integer.parseInt(held) + 1, Integer.parseInt(value(visitor, 3)));
        }
    }

    @ParameterizedTest
    @EnumSource
    void keys_step_the_value_and_repeat_up_to_the_end_of_the_scale(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/new/log");
            Locator reading = visitor.spinbutton("Sensitivity of string 1");
            int most = Integer.parseInt(reading.getAttribute("aria-valuemax"));
            reading.focus();
            for (int repeats = 0; repeats < 4; repeats++) {
                page.keyboard().down("ArrowUp");
            }
            page.keyboard().up("ArrowUp");
            assertEquals("21", value(visitor, 1));
            for (int repeats = 0; repeats < most; repeats++) {
                page.keyboard().down("ArrowUp");
            }

            assertEquals(String.valueOf(most), value(visitor, 1));
            assertThat(visitor.button("Sensitivity of string 1: more")).isDisabled();
        }
    }

    @Test
    void a_finger_that_scrolls_over_a_stepper_changes_nothing(Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, Screen.PHONE)) {
            Page page = visitor.open("/new/log");
            Date evening = Date.from(ServedNotebook.EVENING);
            page.clock().install(new Clock.InstallOptions().setTime(evening));
            page.clock().pauseAt(evening.getTime() + 1000);
            Finger finger = Finger.onGlass(visitor.button("Sensitivity of string 3: more"));
            finger.press();
            finger.dragUp(200);
            finger.lift();
            page.clock().runFor(1000);

            assertEquals("24", value(visitor, 3));
            assertThat(visitor.button("Write it down")).isDisabled();
        }
    }

    @ParameterizedTest
    @EnumSource
    void the_picture_of_the_strings_is_titled_described_and_told_in_numbers(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            String id = visitor.sheet("rigs", RIG).path("id").asText();
            Page page = visitor.open("/rigs/" + id);
            Locator picture = page.getByRole(
                    AriaRole.IMG, new Page.GetByRoleOptions().setName("Sensitivity over time, string by string"));

            assertThat(picture.locator("desc"))
                    .hasText("String 1 went 20, 16, 14, 15, 17. String 2 went 20, 22, 23."
                            + " String 3 went 20, 23, 24. String 4 went 20, 27, 31, 29, 33, 34, 32.");
            page.getByText("The same in numbers").click();
            JsonNode told = visitor.read("/api/rigs/" + id + "/strings").at("/strings/1");
            Locator cells = page.locator(".string-history tbody tr").first().locator("td");
            assertThat(cells.last()).hasText("17");
            assertTrue(cells.count() > 3 && cells.count() <= told.size(), cells.allTextContents()::toString);
        }
    }

    private static List<String> sensitivities(Visitor visitor) {
        return IntStream.rangeClosed(1, 4)
                .mapToObj(each -> value(visitor, each))
                .toList();
    }

    private static List<Integer> sensitivities(JsonNode rig) {
        return IntStream.rangeClosed(1, 4)
                .mapToObj(each ->
                        rig.at("/content/assignments/" + each + "/sensitivity").asInt())
                .toList();
    }

    private static String value(Visitor visitor, int string) {
        return visitor.spinbutton("Sensitivity of string " + string).inputValue();
    }
}
