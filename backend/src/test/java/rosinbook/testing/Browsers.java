package rosinbook.testing;

import com.microsoft.playwright.Browser;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.PlaywrightException;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A real browser: Debian's Chromium where it is installed, without its windows if it can be had so; else Playwright's. */
public final class Browsers implements AutoCloseable {
    private static final List<Path> DEBIAN =
            List.of(Path.of("/usr/bin/chromium-headless-shell"), Path.of("/usr/bin/chromium"));

    private static final double PATIENCE_MILLIS = 20_000;

    private final Playwright playwright;
    private final Browser browser;

    private Browsers(Playwright playwright, Browser browser) {
        this.playwright = playwright;
        this.browser = browser;
    }

    /** Skips or fails the test where there is no browser. */
    public static Browsers open() {
        Optional<Path> installed = DEBIAN.stream().filter(Files::isExecutable).findFirst();
        Playwright playwright = Playwright.create(new Playwright.CreateOptions()
                .setEnv(installed.isPresent() ? Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1") : Map.of()));
        Optional<Browser> browser = launch(playwright, installed);
        if (browser.isEmpty()) {
            playwright.close();
            Needs.met(false, "browser tests need Chromium; install Debian's chromium or run Playwright's installer");
        }
        PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE_MILLIS);
        return new Browsers(playwright, browser.orElseThrow());
    }

    private static Optional<Browser> launch(Playwright playwright, Optional<Path> installed) {
        BrowserType.LaunchOptions options = new BrowserType.LaunchOptions()
                .setArgs(List.of(
                        "--no-sandbox",
                        "--disable-gpu",
                        "--disable-quic",
                        "--disable-background-networking",
                        "--disable-component-update",
                        "--disable-sync"));
        installed.ifPresent(options::setExecutablePath);
        try {
            return Optional.of(playwright.chromium().launch(options));
        } catch (PlaywrightException missing) {
            System.out.println(
                    "No browser: " + missing.getMessage().lines().findFirst().orElse(""));
            return Optional.empty();
        }
    }

    /** Sizes of a screen. */
    public enum Screen {
        PHONE(390, 844),
        DESKTOP(1280, 900);

        private final int width;
        private final int height;

        Screen(int width, int height) {
            this.width = width;
            this.height = height;
        }
    }

    /** A fresh visitor: no cookies, nothing stored. */
    public BrowserContext visitor(String address, Screen screen) {
        BrowserContext context = browser.newContext(new Browser.NewContextOptions()
                .setBaseURL(address)
                .setViewportSize(screen.width, screen.height)
                .setHasTouch(screen == Screen.PHONE)
                .setColorScheme(ColorScheme.LIGHT)
                .setLocale("en-GB")
                .setTimezoneId("Europe/Dublin"));
        context.setDefaultTimeout(PATIENCE_MILLIS);
        return context;
    }

    /** A page that fails the test as soon as a script throws or the page's own policy is broken. */
    public static Page strictPage(BrowserContext context, List<String> complaints) {
        Page page = context.newPage();
        page.onPageError(complaints::add);
        page.onConsoleMessage(message -> {
            boolean refusedByPolicy = message.text().contains("Content Security Policy");
            boolean failedToLoad = message.text().contains("Failed to load resource");
            if (refusedByPolicy || message.type().equals("error") && !failedToLoad) {
                complaints.add(message.text());
            }
        });
        return page;
    }

    @Override
    public void close() {
        browser.close();
        playwright.close();
    }
}
