package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
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
        try (TestDatabase database = TestDatabase.fresh()) {
            new Access(new DatabaseAccessStore(database.database()), Clock.systemUTC(), new SecureRandom())
                    .setPassphrase(new Passphrase("four strings and a bow"));
            Listening listening = new Listening("127.0.0.1", 0, Optional.of(URI.create(scheme + "://band.example")));
            try (Server server = Server.start(database.database(), listening, Clock.systemUTC())) {
                String form = "name=owner&passphrase=four+strings+and+a+bow";
                RawHttp.Reply signedIn = post(server, "/sign-in", form);
                assertEquals(303, signedIn.status(), signedIn.text());
                assertSecure(isSecure, signedIn);
                assertSecure(isSecure, post(server, "/sign-out", ""));
            }
        }
    }

    private static void assertSecure(boolean isSecure, RawHttp.Reply reply) {
        String cookie = reply.header("set-cookie");
        List<String> attributes =
                Arrays.stream(cookie.split(";")).map(String::strip).toList();
        assertTrue(cookie.startsWith("rosinbook-session="), reply.text());
        assertEquals(isSecure, attributes.contains("Secure"), cookie);
    }

    private static RawHttp.Reply post(Server server, String path, String form) throws IOException {
        try (Socket socket =
                new Socket(InetAddress.getLoopbackAddress(), server.javalin().port())) {
            socket.setSoTimeout(15_000);
            String request = "POST " + path + " HTTP/1.1\r\nHost: band.example\r\nContent-Length: " + form.length()
                    + "\r\nContent-Type: application/x-www-form-urlencoded\r\nConnection: close\r\n\r\n" + form;
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            return RawHttp.Reply.read(socket.getInputStream());
        }
    }
}
