package rosinbook.frontend;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import rosinbook.store.Database;
import rosinbook.testing.Browsers;
import rosinbook.web.Server;

/** The frontend's rules, tried in a browser: each {@code *.test.js} exports {@code tests}, functions that throw when they fail. */
class FrontendRulesIT {
    private static final Path TESTS = Path.of("src/test/resources/frontend-rules");

    private static Browsers browsers;
    private static Database database;
    private static Server server;
    private static BrowserContext visitor;

    @BeforeAll
    static void open() {
        browsers = Browsers.open();
        database = Database.inMemory("t" + UUID.randomUUID());
        server = Server.start(database, 0, Clock.systemUTC());
        visitor = browsers.visitor(server.address(), Browsers.Screen.DESKTOP);
    }

    @AfterAll
    static void close() {
        if (browsers != null) {
            browsers.close();
            server.close();
            database.close();
        }
    }

    @TestFactory
    Stream<DynamicTest> rules() throws IOException {
        List<Path> files;
        try (Stream<Path> listed = Files.list(TESTS)) {
            files = listed.filter(file -> file.toString().endsWith(".test.js"))
                    .sorted()
                    .toList();
        }
        assertFalse(files.isEmpty(), "there are rules to try");
        Page page = visitor.newPage();
        page.route("**/frontend-rules/*", FrontendRulesIT::serve);
        page.navigate("/robots.txt");
        List<DynamicTest> tests = new ArrayList<>();
        for (Path file : files) {
            String address = "/frontend-rules/" + file.getFileName();
            Object names =
                    page.evaluate("address => import(address).then(module => Object.keys(module.tests))", address);
            for (Object name : (List<?>) names) {
                tests.add(dynamicTest(
                        file.getFileName() + ": " + name,
                        () -> page.evaluate(
                                "([address, name]) => import(address).then(module => module.tests[name]())",
                                List.of(address, name))));
            }
        }
        return tests.stream();
    }

    private static void serve(Route route) {
        String path = route.request().url();
        Path file = TESTS.resolve(path.substring(path.lastIndexOf('/') + 1));
        try {
            route.fulfill(
                    new Route.FulfillOptions().setContentType("text/javascript").setBody(Files.readString(file)));
        } catch (IOException missing) {
            route.abort();
        }
    }
}
