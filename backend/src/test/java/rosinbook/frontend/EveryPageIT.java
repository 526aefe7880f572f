package rosinbook.frontend;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.Media;
import com.microsoft.playwright.options.ReducedMotion;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Map.Entry;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.extension.ExtendWith;
import rosinbook.testing.Axe;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.PageChecks;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** What every page of the filled example promises, on a phone and on a desk. */
@ExtendWith(OneBrowser.class)
class EveryPageIT {
    private static final int MOST_BYTES = 250_000;
    /** Unpacked; a bench carries two drawings and a meter plan besides, which travel as a fifth of their size. */
    private static final int MOST_BYTES_OF_A_BENCH = 350_000;

    private static ServedNotebook notebook;
    private static Map<String, String> pages;
    /** One for each screen, who goes from page to page. */
    private static final Map<Screen, Visitor> VISITORS = new EnumMap<>(Screen.class);

    @BeforeAll
    static void open(Browsers browsers) {
        notebook = ServedNotebook.withExample();
        for (Screen screen : Screen.values()) {
            VISITORS.put(screen, Visitor.of(notebook, browsers, screen));
        }
        pages = pages(VISITORS.get(Screen.DESKTOP));
    }

    @AfterAll
    static void close() {
        VISITORS.values().forEach(Visitor::close);
        notebook.close();
    }

    @TestFactory
    Stream<DynamicTest> it_keeps_the_promises_of_a_page() {
        return Stream.of(Screen.values()).flatMap(screen -> pages.entrySet().stream()
                .map(page -> dynamicTest(
                        page.getKey() + " on the " + screen.name().toLowerCase(),
                        () -> keepsItsPromises(page, screen))));
    }

    private static void keepsItsPromises(Entry<String, String> place, Screen screen) {
        Visitor visitor = VISITORS.get(screen);
        visitor.page()
                .emulateMedia(new Page.EmulateMediaOptions()
                        .setMedia(Media.SCREEN)
                        .setColorScheme(ColorScheme.LIGHT)
                        .setReducedMotion(ReducedMotion.NO_PREFERENCE));
        Page page = visitor.open(place.getValue());
        boolean isThere = !place.getKey().equals("a page that is not there");
        assertEquals(isThere ? 0 : 1, page.locator(".trouble").count(), "troubles");
        int bytes = visitor.weight();
        boolean isBench = place.getValue().startsWith("/wiring/");
        int mostBytes = isBench ? MOST_BYTES_OF_A_BENCH : MOST_BYTES;
        List<String> serious = Axe.serious(page);
        List<String> overflowing = PageChecks.overflowing(page);
        List<String> small = screen == Screen.PHONE ? PageChecks.smallTargets(page) : List.of();
        page.emulateMedia(new Page.EmulateMediaOptions().setReducedMotion(ReducedMotion.REDUCE));
        List<String> moving = PageChecks.moving(page);
        List<String> byKeyboard = PageChecks.byKeyboard(page);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(ColorScheme.DARK));
        List<String> inTheDark = Axe.serious(page, "color-contrast");
        page.emulateMedia(new Page.EmulateMediaOptions().setMedia(Media.PRINT).setColorScheme(ColorScheme.LIGHT));
        List<String> onPaper = PageChecks.notForPaper(page);
        assertAll(
                () -> assertTrue(bytes > 20_000 && bytes < mostBytes, bytes + " bytes"),
                () -> assertEquals(List.of(), serious, "axe-core in the light"),
                () -> assertEquals(List.of(), inTheDark, "axe-core in the dark"),
                () -> assertEquals(List.of(), overflowing, "beside the screen"),
                () -> assertEquals(List.of(), small, "too small for a thumb"),
                () -> assertEquals(List.of(), moving, "moving though less motion is asked for"),
                () -> assertEquals(List.of(), byKeyboard, "by keyboard"),
                () -> assertEquals(List.of(), onPaper, "on paper"),
                () -> assertEquals(List.of(), visitor.complaints(), "what it complained of"));
    }

    private static Map<String, String> pages(Visitor visitor) {
        String rig = path(visitor, "rigs", "Green violin into the stage synth");
        String set = path(visitor, "setlists", "Tannery, second night");
        String played = path(visitor, "setlists", "Tannery, first night");
        String recipe = path(visitor, "recipes", "Copper Weather, answering");
        Map<String, String> pages = new LinkedHashMap<>();
        pages.put("tonight", "/");
        pages.put("the sets", "/setlists");
        pages.put("the planned set", set);
        pages.put("the played set", played);
        pages.put("an earlier revision of a set", set + "?revision=1");
        pages.put("set against set", "/setlists/compare?was=" + id(played) + "&now=" + id(set));
        pages.put("the stage", "/stage/" + id(set));
        pages.put("the pieces", "/pieces");
        pages.put("the pieces by style", "/pieces?by=style");
        pages.put("a piece", path(visitor, "pieces", "Drowsy Maggie"));
        pages.put("the recipes", "/recipes");
        pages.put("a recipe", recipe);
        pages.put("an earlier revision of a recipe", recipe + "?revision=1");
        pages.put("a starting point", path(visitor, "recipes", startingPoint(visitor)));
        pages.put("the rigs", "/rigs");
        pages.put("a rig", rig);
        pages.put("an earlier revision of a rig", rig + "?revision=2");
        pages.put("a rig against itself", "/compare" + rig + "?was=3&now=9");
        pages.put("the wiring bench", "/wiring");
        pages.put("a rig on the wiring bench", "/wiring/" + id(rig));
        pages.put("an instrument", path(visitor, "instruments", "Green violin"));
        pages.put("a synth", path(visitor, "synths", "Stage synth"));
        pages.put("the log", "/log");
        pages.put("the takes", "/takes");
        pages.put("a take", path(visitor, "takes", "Drowsy Maggie, E lower"));
        pages.put("playing live", "/takes/live");
        pages.put("the exercise", "/exercise");
        pages.put("the shares", "/shares");
        pages.put("the people", "/people");
        pages.put("after a rehearsal", "/new/log");
        for (String kind : List.of("instruments", "synths", "rigs", "pieces", "recipes", "setlists")) {
            pages.put("a new sheet of " + kind, "/new/" + kind);
        }
        pages.put("a page that is not there", "/nowhere");
        visitor.post("/api/shares", Map.of("kind", "setlists", "id", id(set), "name", "For Jonas"));
        return pages;
    }

    private static String startingPoint(Visitor visitor) {
        for (var recipe : visitor.read("/api/recipes?limit=200").path("items")) {
            if (!recipe.path("content").has("piece")) {
                return recipe.path("title").asText();
            }
        }
        throw new AssertionError("the example has a starting point");
    }

    private static String path(Visitor visitor, String kind, String title) {
        return "/" + kind + "/" + visitor.sheet(kind, title).path("id").asText();
    }

    private static String id(String path) {
        return path.substring(path.lastIndexOf('/') + 1);
    }
}
