package rosinbook.testing;

import com.microsoft.playwright.JSHandle;
import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** What is wrong with a page for a small screen, a thumb or a keyboard, in words; nothing if all is well. */
public final class PageChecks {
    private static final int MOST_STOPS = 1_000;

    private PageChecks() {}

    /** What is cut off at the left or the right. */
    public static List<String> overflowing(Page page) {
        return words(page.evaluate(script("overflows")));
    }

    /**
     * Controls a thumb would miss.
     *
     * @see "WCAG 2.2, success criteria 2.5.5 (44 px, inline) and 2.5.8 (spacing)"
     */
    public static List<String> smallTargets(Page page) {
        return words(page.evaluate(script("small-targets"), controls(page)));
    }

    /**
     * Walks the page with the Tab key.
     *
     * @return controls that are not reached, reached against the visual order, whose focus cannot be seen or is covered
     * @see "WCAG 2.2, success criteria 2.1.1, 2.4.3, 2.4.7, 2.4.11"
     */
    public static List<String> byKeyboard(Page page) {
        // A field that opened by itself closes when it is left.
        page.evaluate("() => { const { body } = document; body.tabIndex = -1; body.focus();"
                + " body.removeAttribute('tabindex'); scrollTo(0, 0); }");
        JSHandle walk = page.evaluateHandle(script("focus"), controls(page));
        List<String> complaints = new ArrayList<>();
        String stop = "on";
        for (int stops = 0; !stop.equals("out") && stops < MOST_STOPS; stops++) {
            page.keyboard().press("Tab");
            stop = (String) walk.evaluate("walk => walk.stop()");
            if (stop.startsWith("strange")) {
                complaints.add("the focus is on something that looked closed: " + stop);
            }
        }
        if (!stop.equals("out")) {
            complaints.add("the Tab key is caught on the page");
        }
        complaints.addAll(words(walk.evaluate("walk => [...walk.complaints, ...walk.unreached()]")));
        return complaints;
    }

    /** What still moves although the page was asked for less motion. */
    public static List<String> moving(Page page) {
        return words(page.evaluate("() => [...document.querySelectorAll('*')].filter(element => {"
                + " const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(element);"
                + " return !/^0s(, 0s)*$/.test(transitionDuration) || animationName !== 'none' || scrollBehavior === 'smooth';"
                + " }).map(element => element.outerHTML.slice(0, 120))"));
    }

    /** What can only be touched and would be printed all the same. */
    public static List<String> notForPaper(Page page) {
        return words(page.evaluate("() => [...document.querySelectorAll("
                + "'nav, .masthead, .colophon, .save-bar, .buttons, dialog, button:not(.value)')]"
                + ".filter(element => element.checkVisibility({ visibilityProperty: true }))"
                + ".map(element => element.outerHTML.slice(0, 120))"));
    }

    private static JSHandle controls(Page page) {
        return page.evaluateHandle(script("controls"));
    }

    @SuppressWarnings("unchecked")
    private static List<String> words(Object answer) {
        return (List<String>) answer;
    }

    private static String script(String name) {
        try (InputStream file = PageChecks.class.getResourceAsStream("/page-checks/" + name + ".js")) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .filter(line -> !line.startsWith("//"))
                    .reduce("", (text, line) -> text + line + "\n");
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
