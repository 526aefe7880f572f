package rosinbook.testing;

import com.microsoft.playwright.Locator;
import java.util.List;

/** A page as its reader sees it. */
public final class Reading {
    private Reading() {}

    /**
     * The words of each, with single spaces, as soon as there are any; "became", which only a screen reader says beside the
     * arrow, is left out.
     */
    public static List<String> lines(Locator entries) {
        entries.first().waitFor();
        return entries.allInnerTexts().stream()
                .map(text ->
                        text.replaceAll("\\s+", " ").replace("→ became", "→").trim())
                .toList();
    }

    public static String line(Locator entry) {
        return lines(entry).get(0);
    }
}
