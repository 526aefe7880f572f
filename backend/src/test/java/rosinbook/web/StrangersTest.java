package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rosinbook.limit.Limit;

/** What anybody may send, signed in or not. */
class StrangersTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    private Answer post(String path, String type, String body) {
        return api.send(api.to(path).header("Content-Type", type).POST(BodyPublishers.ofString(body)));
    }

    @Test
    void an_address_of_many_short_parts_is_no_such_page() throws IOException {
        String long_ = "/a".repeat(8_000);
        for (String path : List.of(long_, long_ + "/x.js", long_ + "/x.mid", "/compare" + long_)) {
            RawHttp.Reply reply = RawHttp.reply(api, "GET " + path + " HTTP/1.1\r\nHost: localhost\r\n\r\n");
            assertEquals(404, reply.status(), reply.text().substring(0, 200));
        }
        api.get("//app.js").expect(404);
        api.get("/app.js").expect(200);
        api.get("/styles/share.css").expect(200);
    }

    /** Such an address is an invitation, or nothing. */
    @Test
    void behind_invitations_there_are_no_files_of_pages() {
        api.get("/join/edition/app.js").problem(404, "no-such-page");
        api.get("/join/x/y").problem(404, "no-such-page");
    }

    /** A form in parts would be read past the limit of forms. */
    @Test
    void a_form_is_sent_as_a_form() {
        String parts = "--x\r\nContent-Disposition: form-data; name=\"passphrase\"\r\n\r\n" + "y".repeat(20_000)
                + "\r\n--x--\r\n";
        for (String path : List.of("/sign-in", "/join/AAAAAAAAAAAAAAAAAAAAAA")) {
            for (String type : List.of("multipart/form-data; boundary=x", "application/json", "text/plain", ";")) {
                post(path, type, parts).problem(415, "wrong-media-type");
            }
            api.send(api.to(path).POST(BodyPublishers.ofString("name=a"))).problem(415, "wrong-media-type");
            post(path, "application/x-www-form-urlencoded", "y".repeat(10_001)).problem(413, Limit.FORM_BYTES.type());
        }
        post("/sign-in", "Application/X-WWW-Form-Urlencoded;charset=UTF-8", "name=a&passphrase=b")
                .expect(403);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a/b; charset",
                "a/b;charset=",
                "a/b; charset=none-such",
                "a/b; CharSet = ?",
                "a/b; boundary=x; charset=\"none-such\"",
                "a/b; charset=\"utf-8",
                "a/b; charset=\"\"",
                "a/b; charsets",
                "charset"
            })
    void letters_in_an_encoding_that_nobody_knows_are_refused(String type) {
        for (String path : List.of("/sign-in", "/api/pieces?limit=5", "/rigs")) {
            post(path, type, "name=a").problem(400, "bad-request");
            api.send(api.to(path).header("Content-Type", type)).problem(400, "bad-request");
        }
    }

    @Test
    void json_of_no_type_at_all_is_refused_like_any_other() {
        post("/api/pieces", ";", "{}").problem(415, "wrong-media-type");
        post("/api/pieces", "application/json; charset=utf-8", "{}").problem(422, "invalid-content");
        post("/api/pieces", "application/json; charset=\"utf-8\"", "{}").problem(422, "invalid-content");
        post("/sign-in", "application/x-www-form-urlencoded; charset=\"UTF-8\"", "name=a&passphrase=b")
                .expect(403);
        api.send(api.to("/api/pieces?limit=5").header("Content-Type", "a/b; charset=iso-8859-1"))
                .expect(200);
    }

    @Test
    void a_reading_of_a_string_or_an_input_that_no_instrument_has_is_refused() {
        for (Map.Entry<String, String> place : Map.of("100000000,'input':1", "string", "1,'input':100000000", "input")
                .entrySet()) {
            var problem = api.post(
                            "/api/bench/levels",
                            "{'readings':[{'loudness':'soft','decibels':-20,'string':" + place.getKey() + "}]}")
                    .problem(422, Limit.CHANNELS.type());
            assertEquals("/readings/0", problem.path("pointer").asText());
            assertTrue(problem.path("detail").asText().contains("8"), problem.toString());
        }
    }

    @Test
    void as_many_readings_as_are_described_are_taken_and_no_more() {
        String reading = "{'string':1,'loudness':'soft','input':1,'decibels':-20},"
                + "{'string':2,'loudness':'soft','input':2,'decibels':-20},";
        String most = reading.repeat(500);
        api.post("/api/bench/levels", "{'readings':[" + most.substring(0, most.length() - 1) + "]}")
                .expect(200);
        api.post("/api/bench/levels", "{'readings':[" + most + reading.substring(0, reading.length() / 2 - 1) + "]}")
                .problem(422, Limit.ENTRIES.type());
    }

    /** What a proxy passes on comes from elsewhere, and nobody has signed in. */
    @Test
    void a_notebook_at_home_is_not_reached_through_a_proxy() {
        for (Map.Entry<String, String> told : Map.of(
                        "X-Forwarded-For", "198.51.100.7",
                        "Forwarded", "for=198.51.100.7",
                        "X-Forwarded-Host", "band.example",
                        "X-Forwarded-Proto", "https",
                        "X-Real-IP", "198.51.100.7",
                        "Via", "1.1 gate")
                .entrySet()) {
            for (String path : List.of("/api/pieces", "/", "/app.js")) {
                var problem = api.send(api.to(path).header(told.getKey(), told.getValue()))
                        .problem(403, "behind-a-proxy");
                String detail = problem.path("detail").asText();
                assertTrue(detail.contains("--public-address") && detail.contains("rosinbook passphrase"), detail);
            }
        }
        api.send(api.to("/healthz").header("Via", "1.1 gate")).expect(200);
    }

    @Test
    void where_players_sign_in_a_proxy_is_welcome() throws IOException {
        try (Band band = new Band()) {
            band.as(band.ada)
                    .with("X-Forwarded-For", "198.51.100.7")
                    .get("/api/pieces")
                    .expect(200);
        }
    }
}
