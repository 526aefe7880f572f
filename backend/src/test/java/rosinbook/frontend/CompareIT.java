package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
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

/** What changed: tonight's set against last week's, and two revisions of one sheet. */
@ExtendWith(OneBrowser.class)
class CompareIT {
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
    void tonight_against_last_week_is_one_click_from_the_first_page(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");
            assertThat(page.locator(".since .summary"))
                    .hasText("2 new in the set, 1 left out, 1 moved, 7 changes in the sounds, 2 changes on the rig");
            page.getByText("See every change").click();
            visitor.arriveAt("**/setlists/compare?*");

            assertThat(page.locator("h1")).hasText("Tannery, second night");
            assertThat(page.locator(".lead"))
                    .hasText("Thursday 19 November 2026 since Tannery, first night, Thursday 12 November 2026");
            assertEquals(List.of(), Axe.serious(page));
        }
    }

    /** What the example's makers changed: its sets.json, rigs.json and recipes.json since the day before last week's set. */
    @ParameterizedTest
    @EnumSource
    void it_tells_what_the_makers_of_the_example_changed_and_nothing_else(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");
            page.getByText("See every change").click();
            visitor.arriveAt("**/setlists/compare?*");

            assertEquals(
                    List.of("On the rig", "New in the set", "Left out", "Moved", "Sounds different"),
                    page.locator(".telling h2").allTextContents());
            assertEquals(
                    List.of("String 1 sensitivity 15 → 17 (+2)", "String 4 sensitivity 34 → 32 (−2)"),
                    Reading.lines(section(page, "On the rig").locator(".change-list > ul > li")));
            assertEquals(List.of("Harbour Static", "The Lark in the Clear Air"), names(page, "New in the set"));
            assertEquals(List.of("The Kesh"), names(page, "Left out"));
            assertEquals(
                    List.of("Star of the County Down 5th → 2nd"),
                    Reading.lines(section(page, "Moved").locator("li")));
            assertEquals(
                    List.of("Copper Weather", "Low Water at Quillness", "Drowsy Maggie"),
                    names(page, "Sounds different"));
            assertEquals(
                    List.of(
                            "Overdrive Drive 55 → 50% (−5) Tone 58 → 48% (−10)",
                            "Reverb Mix 32 → 36% (+4) Space hall → chapel",
                            "Shadow on · Attack 40 · Level 24 % · Octave 1 · Sound choir new",
                            "Overdrive Tone 58 → 48% (−10)",
                            "Delay Time dotted eighth (208.3 ms at 216 bpm) → eighth (138.9 ms at 216 bpm)"),
                    Reading.lines(section(page, "Sounds different").locator(".sound-changes > ul > li")));
        }
    }

    @ParameterizedTest
    @EnumSource
    void what_stayed_the_same_is_shown_only_when_asked_for(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            Page page = visitor.open("/");
            page.getByText("See every change").click();
            visitor.arriveAt("**/setlists/compare?*");
            assertThat(section(page, "As last time")).hasCount(0);
            page.getByLabel("Show what stayed the same").check();

            assertEquals(List.of("The Silver Spear", "The Coolin", "Nine Gates"), names(page, "As last time"));
        }
    }

    @ParameterizedTest
    @EnumSource
    void any_two_revisions_are_compared_and_the_earlier_one_is_saved_again(Screen screen, Browsers browsers) {
        try (Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            JsonNode newest = visitor.sheet("rigs", "Green violin into the stage synth");
            int revision = newest.path("revision").asInt();
            String rig = "/rigs/" + newest.path("id").asText();
            Page page = visitor.open("/compare" + rig + "?was=3&now=" + revision);
            assertEquals(
                    List.of("sensitivity 27 → 32 (+5)"),
                    Reading.lines(page.locator(".compared li li")
                                    .filter(new Locator.FilterOptions().setHasText("sensitivity")))
                            .subList(3, 4));
            assertEquals(List.of(), Axe.serious(page));

            visitor.button("go back to this").click();
            visitor.arriveAt("/compare" + rig + "?was=" + revision + "&now=" + (revision + 1));

            assertEquals(
                    List.of("sensitivity 32 → 27 (−5)"),
                    Reading.lines(page.locator(".compared li li")
                                    .filter(new Locator.FilterOptions().setHasText("sensitivity")))
                            .subList(3, 4));
            JsonNode restored = visitor.read("/api" + rig);
            assertEquals(revision + 1, restored.path("revision").asInt());
            assertEquals(visitor.read("/api" + rig + "/revisions/3").path("content"), restored.path("content"));
            assertEquals(
                    newest.path("content"),
                    visitor.read("/api" + rig + "/revisions/" + revision).path("content"));
        }
    }

    private static Locator section(Page page, String heading) {
        return page.locator(".telling section")
                .filter(new Locator.FilterOptions()
                        .setHas(page.locator("h2").getByText(heading, new Locator.GetByTextOptions().setExact(true))));
    }

    private static List<String> names(Page page, String heading) {
        return section(page, heading).locator(".name").allTextContents();
    }
}
