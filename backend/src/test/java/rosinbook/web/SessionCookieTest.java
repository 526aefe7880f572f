package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rosinbook.access.Access;
import rosinbook.access.Passphrase;
import rosinbook.store.DatabaseAccessStore;
import rosinbook.testing.TestDatabase;

class SessionCookieTest {
    /** RFC 6265, section 4.1.2.5: with Secure a browser never sends it unencrypted; without encryption it would never send it. */
    @ParameterizedTest
    @CsvSource({"https, true", "http, false"})
    void a_session_travels_encrypted_wherever_the_address_does(String scheme, boolean isSecure) throws IOException {
        try (TestDatabase database = TestDatabase.fresh();
                Server server = reachedAt(scheme + "://band.example", database)) {
            String form = "name=owner&passphrase=four+strings+and+a+bow";
            RawHttp.Reply signedIn = post(server, "/sign-in", form);
            assertEquals(303, signedIn.status(), signedIn.text());
            assertSecure(isSecure, signedIn);
            String cookie = signedIn.header("set-cookie").replaceAll(";.*", "");
            RawHttp.Reply mine = get(server, "/api/me", cookie);
            assertEquals(200, mine.status(), mine.text());
            assertSecure(isSecure, post(server, "/sign-out", ""));
        }
    }

    private static void assertSecure(boolean isSecure, RawHttp.Reply reply) {
        String cookie = reply.header("set-cookie");
        List<String> attributes =
                Arrays.stream(cookie.split(";")).map(String::strip).toList();
        // RFC 6265bis, section 4.1.3.2: such a name asks for Secure, the whole site as its path, and no domain.
        assertTrue(cookie.startsWith(isSecure ? "__Host-rosinbook-session=" : "rosinbook-session="), reply.text());
        assertEquals(isSecure, attributes.contains("Secure"), cookie);
        assertTrue(attributes.contains("Path=/"), cookie);
        assertFalse(cookie.toLowerCase(Locale.ROOT).contains("domain"), cookie);
    }

    /** OWASP ASVS 5.0, 3.4.1; RFC 6797, section 7.2 (not over plain HTTP) and 8.3 (it holds for every port of the name). */
    @ParameterizedTest
    @CsvSource({
        "https://band.example, max-age=31536000",
        "https://band.example:443, max-age=31536000",
        "https://band.example:8443, ''",
        "http://band.example, ''"
    })
    void browsers_are_told_to_come_encrypted_only_where_the_name_is_ours_alone(String address, String told)
            throws IOException {
        try (TestDatabase database = TestDatabase.fresh();
                Server server = reachedAt(address, database)) {
            assertEquals(told, get(server, "/sign-in", "").header("strict-transport-security"));
            assertEquals(told, get(server, "/api/me", "").header("strict-transport-security"));
        }
    }

    private static Server reachedAt(String address, TestDatabase database) {
        new Access(new DatabaseAccessStore(database.database()), Clock.systemUTC(), new SecureRandom())
                .setPassphrase(new Passphrase("four strings and a bow"));
        Listening listening = new Listening("127.0.0.1", 0, Optional.of(URI.create(address)));
        return Server.start(database.database(), listening, Clock.systemUTC());
    }

    private static RawHttp.Reply get(Server server, String path, String cookie) throws IOException {
        return reply(
                server,
                "GET " + path + " HTTP/1.1\r\nHost: band.example\r\nCookie: " + cookie
                        + "\r\nConnection: close\r\n\r\n");
    }

    private static RawHttp.Reply post(Server server, String path, String form) throws IOException {
        return reply(
                server,
                "POST " + path + " HTTP/1.1\r\nHost: band.example\r\nContent-Length: " + form.length()
                        + "\r\nContent-Type: application/x-www-form-urlencoded\r\nConnection: close\r\n\r\n" + form);
    }

    private static RawHttp.Reply reply(Server server, String request) throws IOException {
        try (Socket socket =
                new Socket(InetAddress.getLoopbackAddress(), server.javalin().port())) {
            socket.setSoTimeout(15_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            return RawHttp.Reply.read(socket.getInputStream());
        }
    }
}
