package rosinbook.frontend;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route.FulfillOptions;
import org.junit.jupiter.api.extension.ExtendWith;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rosinbook.testing.Browsers;
import rosinbook.testing.Browsers.Screen;
import rosinbook.testing.OneBrowser;
import rosinbook.testing.ServedNotebook;
import rosinbook.testing.Visitor;

/** What a player sees when the server fails. */
@ExtendWith(OneBrowser.class)
class TroubleIT {
    private static void fail(Page page, int status, String type, String title) {
        page.unroute("**/api/pieces?*");
        page.route(
                "**/api/pieces?*",
                route -> route.fulfill(new FulfillOptions()
                        .setStatus(status)
                        .setContentType("application/problem+json")
                        .setBody("{\"type\":\"/problems/" + type + "\",\"title\":\"" + title + "\",\"status\":" + status
                                + ",\"detail\":\"Try again\",\"requestId\":\"7k3mq9txab\"}")));
    }

    @ParameterizedTest
    @EnumSource
    void only_a_fault_of_ours_shows_the_request_to_quote(Screen screen, Browsers browsers) {
        try (ServedNotebook notebook = ServedNotebook.withExample();
                Visitor visitor = Visitor.of(notebook, browsers, screen)) {
            fail(visitor.page(), 500, "our-fault", "Something went wrong on our side");
            Page page = visitor.open("/pieces");
            assertThat(page.locator(".trouble h2")).hasText("Something went wrong on our side");
            assertThat(page.locator(".trouble code")).hasText("7k3mq9txab");
            assertThat(page.locator(".trouble code")).isInViewport();
            fail(visitor.page(), 400, "bad-request", "The request is not right");
            page = visitor.open("/pieces");
            assertThat(page.locator(".trouble h2")).hasText("The request is not right");
            assertThat(page.locator(".trouble code")).hasCount(0);
            fail(visitor.page(), 503, "stopping", "The notebook is being closed");
            page = visitor.open("/pieces");
            assertThat(page.locator(".trouble h2")).hasText("The notebook is out of reach");
        }
    }
}
