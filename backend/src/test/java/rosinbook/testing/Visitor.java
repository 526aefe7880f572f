package rosinbook.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.microsoft.playwright.APIResponse;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Request;
import com.microsoft.playwright.Response;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.RequestOptions;
import java.util.ArrayList;
import java.util.Date;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Somebody with a browser of their own, looking at a notebook; leaving fails if a page of it complained. */
public final class Visitor implements AutoCloseable {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String DRAWN = "main[data-drawn='yes']";

    private final BrowserContext context;
    private final Page page;
    private final List<String> complaints = new ArrayList<>();
    private final List<Response> answers = new ArrayList<>();
    private final Set<Request> underWay = new HashSet<>();

    private Visitor(BrowserContext context) {
        this.context = context;
        context.clock().setFixedTime(Date.from(ServedNotebook.EVENING));
        page = Browsers.strictPage(context, complaints);
        page.onResponse(this::collect);
        page.onRequest(underWay::add);
        page.onRequestFinished(underWay::remove);
        page.onRequestFailed(underWay::remove);
        page.onDialog(dialog -> {
            complaints.add("a dialog appeared: " + dialog.message());
            dialog.dismiss();
        });
    }

    /** What the page before had asked for is nobody's business any more, whether or not it is told how that ended. */
    private void collect(Response answer) {
        if (answer.request().isNavigationRequest()) {
            answers.clear();
            underWay.retainAll(Set.of(answer.request()));
        }
        answers.add(answer);
    }

    public static Visitor of(ServedNotebook notebook, Browsers browsers, Browsers.Screen screen) {
        return new Visitor(browsers.visitor(notebook.address(), screen));
    }

    public Page page() {
        return page;
    }

    /** Goes to a page of the notebook and waits until it is drawn. */
    public Page open(String path) {
        if (page.url().replaceAll("#.*", "").endsWith(path.replaceAll("#.*", ""))) {
            // An address that differs by its anchor only would not be loaded again.
            page.navigate("about:blank");
        }
        page.navigate(path);
        return drawn();
    }

    /** Waits until the page that a link or a button led to is drawn. */
    public Page arriveAt(String path) {
        page.waitForURL(path);
        return drawn();
    }

    private Page drawn() {
        page.waitForSelector(DRAWN);
        return settled();
    }

    /** Waits until the page has all it asked for and has drawn it. */
    public Page settled() {
        do {
            page.waitForCondition(() -> underWay.isEmpty());
            page.evaluate("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        } while (!underWay.isEmpty());
        return page;
    }

    /** Bytes of every answer since this page was opened, as they stand in the page, not as they travelled. */
    public int weight() {
        // Asking for one lets others arrive meanwhile.
        return List.copyOf(answers).stream()
                .mapToInt(answer -> answer.body().length)
                .sum();
    }

    public Locator button(String name) {
        return named(AriaRole.BUTTON, name);
    }

    public Locator link(String name) {
        return named(AriaRole.LINK, name);
    }

    public Locator spinbutton(String name) {
        return named(AriaRole.SPINBUTTON, name);
    }

    private Locator named(AriaRole role, String name) {
        return page.getByRole(role, new Page.GetByRoleOptions().setName(name).setExact(true));
    }

    /** What the notebook answers beside the page. */
    public JsonNode read(String path) {
        return json(context.request().get(path));
    }

    public JsonNode post(String path, Object body) {
        return json(context.request().post(path, RequestOptions.create().setData(body)));
    }

    /** The newest revision of a sheet by its title. */
    public JsonNode sheet(String kind, String title) {
        for (JsonNode sheet : read("/api/" + kind + "?limit=200").path("items")) {
            if (sheet.path("title").asText().equals(title)) {
                return sheet;
            }
        }
        throw new AssertionError("no " + kind + " sheet is called " + title);
    }

    /** Creates a sheet. @return its envelope */
    public JsonNode write(String kind, Map<String, Object> content) {
        return post("/api/" + kind, Map.of("content", content, "reason", "", "by", "Mira"));
    }

    private static JsonNode json(APIResponse response) {
        try {
            if (!response.ok()) {
                throw new AssertionError(response.url() + " answered " + response.status() + ": " + response.text());
            }
            return JSON.readTree(response.text());
        } catch (JsonProcessingException notJson) {
            throw new AssertionError(response.url() + " answered no JSON", notJson);
        }
    }

    /** What pages complained of so far: errors of scripts, breaches of the content policy, dialogs of the browser. */
    public List<String> complaints() {
        return complaints;
    }

    @Override
    public void close() {
        context.close();
        assertEquals(List.of(), complaints, "what pages complained of");
    }
}
