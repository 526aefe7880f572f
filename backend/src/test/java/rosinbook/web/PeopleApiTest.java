package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.URI;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** Players, invitations, notebooks, members and sessions, from elsewhere and at the computer itself. */
class PeopleApiTest {
    private final Band band;

    PeopleApiTest() throws IOException {
        band = new Band();
    }

    @AfterEach
    void close() throws IOException {
        band.close();
    }

    private JsonNode invite(String name) {
        return band.as(band.mira)
                .post("/api/players", "{'name':'" + name + "'}")
                .expect(201)
                .json();
    }

    private static String path(JsonNode invitation) {
        return URI.create(invitation.path("invitation").asText()).getPath();
    }

    private Answer join(String path, String passphrase) {
        return band.stranger().form(path, Map.of("passphrase", passphrase));
    }

    @Test
    void an_invitation_opens_once_and_every_other_link_says_the_same() {
        String path = path(invite("Tilda"));
        Answer page = band.stranger().get(path).expect(200);
        assertTrue(page.text().contains("Welcome, Tilda"), page.text());
        assertEquals("private, no-store", page.header("Cache-Control"));
        assertEquals("noindex, nofollow", page.header("X-Robots-Tag"));
        Answer tooShort = join(path, "short").expect(422);
        assertTrue(tooShort.text().contains("15 to 200 characters"), tooShort.text());
        Answer joined = join(path, "tilda plays the viola").expect(303);
        assertFlags(joined.header("Set-Cookie"));
        Band.Caller tilda = band.new Caller(Band.session(joined));
        assertEquals("Tilda", tilda.get("/api/me").json().path("name").asText());
        assertEquals(
                "Tilda's notebook",
                tilda.get("/api/me").json().path("notebook").path("title").asText());
        Answer used = join(path, "somebody else's words").expect(404);
        String outOfDate = path(invite("Wim"));
        band.clock.pass(Duration.ofDays(7));
        Answer late = join(outOfDate, "a passphrase of Wim's").expect(404);
        Answer never = join("/join/AAAAAAAAAAAAAAAAAAAAAA", "a passphrase of nobody's");
        assertEquals(used.text(), late.text());
        assertEquals(used.text(), never.expect(404).text());
        assertEquals(used.text(), band.stranger().get(path).expect(404).text());
        assertEquals("", used.header("Set-Cookie"));
    }

    private static void assertFlags(String cookie) {
        // OWASP ASVS 5.0, 3.3: HttpOnly, SameSite, and the whole site as its path.
        Set<String> flags = Set.of(cookie.split("; ?"));
        assertTrue(flags.contains("HttpOnly"), cookie);
        assertTrue(flags.contains("SameSite=Lax"), cookie);
        assertTrue(flags.contains("Path=/"), cookie);
        assertTrue(flags.contains("Max-Age=" + Duration.ofDays(30).toSeconds()), cookie);
    }

    @Test
    void a_forgotten_passphrase_is_replaced_by_another_invitation() {
        String session = band.oskar.session;
        JsonNode link = band.as(band.mira)
                .post("/api/players/" + band.oskar.id + "/invitation", "{}")
                .expect(201)
                .json();
        band.new Caller(session).get("/api/me").expect(200);
        join(path(link), "a new one of my own").expect(303);
        band.new Caller(session).get("/api/me").problem(401, "sign-in-needed");
        signIn("Oskar", band.oskar.passphrase).expect(403);
        signIn("oskar", "a new one of my own").expect(303);
    }

    private Answer signIn(String name, String passphrase) {
        return band.stranger().form("/sign-in", Map.of("name", name, "passphrase", passphrase));
    }

    @Test
    void a_name_is_taken_once_and_a_keeper_stays() {
        band.as(band.mira).post("/api/players", "{'name':'JONAS'}").problem(409, "name-taken");
        for (String name : List.of("", "   ", "x".repeat(61), "A\\u0000b", "A\\u200bda")) {
            band.as(band.mira).post("/api/players", "{'name':'" + name + "'}").problem(422, "invalid-content");
        }
        band.as(band.mira).delete("/api/players/" + band.mira.id).problem(409, "keeper-stays");
        band.as(band.mira).delete("/api/players/" + UUID.randomUUID()).problem(404, "no-such-player");
        band.as(band.mira).delete("/api/players/nobody").problem(404, "no-such-player");
        List<String> names = band.as(band.lena).get("/api/players").expect(200).items().stream()
                .map(player -> player.path("name").asText())
                .toList();
        assertEquals(List.of("Ada", "Jonas", "Lena", "Mira", "Oskar"), names);
    }

    @Test
    void a_closed_account_is_out_at_once_and_its_notebook_is_the_keepers() {
        band.as(band.oskar).post("/api/pieces", "{'content':{'title':'Kept'}}").expect(201);
        band.as(band.mira).delete("/api/players/" + band.oskar.id).expect(204);
        band.as(band.oskar).get("/api/me").problem(401, "sign-in-needed");
        signIn("Oskar", band.oskar.passphrase).expect(403);
        List<JsonNode> pieces = band.as(band.mira)
                .in(band.oskar.notebook)
                .get("/api/pieces")
                .expect(200)
                .items();
        assertEquals("Kept", pieces.get(0).path("title").asText());
    }

    @Test
    void what_was_saved_is_signed_with_the_players_name_whatever_was_sent() {
        String id = band.as(band.jonas)
                .in(band.ada.notebook)
                .post("/api/pieces", "{'content':{'title':'One'},'by':'Ada','reason':'forged'}")
                .expect(201)
                .id();
        Band.Caller jonas = band.as(band.jonas).in(band.ada.notebook).with("If-Match", "\"r1\"");
        jonas.put("/api/pieces/" + id, "{'content':{'title':'Two'},'by':'Ada'}").expect(200);
        band.as(band.ada)
                .with("If-Match", "\"r2\"")
                .post("/api/pieces/" + id + "/revisions/1/restore", "{'by':'Jonas'}")
                .expect(200);
        List<String> savedBy = band.as(band.ada).get("/api/pieces/" + id + "/revisions").items().stream()
                .map(revision -> revision.path("savedBy").asText())
                .toList();
        assertEquals(List.of("Ada", "Jonas", "Jonas"), savedBy);
    }

    @Test
    void a_session_opens_the_notebook_it_was_told_to_and_others_stay_where_they_are() {
        Band.Caller lena = band.as(band.lena);
        assertEquals(band.lena.notebook, open(lena), "one's own at first");
        lena.post("/api/notebooks/" + band.ada.notebook + "/open", "{}").expect(204);
        assertEquals(band.ada.notebook, open(lena));
        assertEquals(band.lena.notebook, open(lena.in(band.lena.notebook)), "named in the header");
        assertEquals(
                band.lena.notebook,
                lena.in(band.ada.notebook)
                        .get("/api/me?notebook=" + band.lena.notebook)
                        .json()
                        .at("/notebook/id")
                        .asText(),
                "named in the address, which counts before the header");
        lena.post("/api/pieces", "{'content':{'title':'One'}}").problem(403, "may-only-read");
        lena.in(band.lena.notebook)
                .post("/api/pieces", "{'content':{'title':'One'}}")
                .expect(201);
        band.as(band.ada)
                .delete("/api/notebooks/" + band.ada.notebook + "/members/" + band.lena.id)
                .expect(204);
        assertEquals(band.lena.notebook, open(lena), "a right that was taken is gone at once");
        lena.in(band.ada.notebook).get("/api/tonight").problem(404, "no-such-notebook");
        assertTrue(lena.in(band.ada.notebook)
                .get("/api/me")
                .json()
                .path("notebook")
                .isMissingNode());
    }

    private static String open(Band.Caller caller) {
        return caller.get("/api/me").expect(200).json().at("/notebook/id").asText();
    }

    @Test
    void rights_change_at_once_and_a_refusal_names_whom_to_ask() {
        Band.Caller lena = band.as(band.lena).in(band.ada.notebook);
        JsonNode refused =
                lena.post("/api/pieces", "{'content':{'title':'One'}}").problem(403, "may-only-read");
        assertEquals(
                "You may read this notebook, not write in it. Ask Ada.",
                refused.path("detail").asText());
        band.let(band.lena, "write");
        lena.post("/api/pieces", "{'content':{'title':'One'}}").expect(201);
        JsonNode notOwner = lena.put("/api/notebooks/" + band.ada.notebook, "{'title':'Mine'}")
                .problem(403, "owner-only");
        assertEquals("Ask Ada.", notOwner.path("detail").asText());
        band.let(band.lena, "own");
        lena.put("/api/notebooks/" + band.ada.notebook, "{'title':'Ours'}").expect(200);
        assertEquals(
                List.of("Ada own", "Lena own", "Jonas write"),
                lena.get("/api/notebooks/" + band.ada.notebook + "/members").items().stream()
                        .map(member -> member.path("name").asText() + " "
                                + member.path("may").asText())
                        .toList());
        band.let(band.lena, "read");
        lena.post("/api/pieces", "{'content':{'title':'Two'}}").problem(403, "may-only-read");
    }

    @Test
    void everybody_may_leave_but_the_last_owner() {
        String members = "/api/notebooks/" + band.ada.notebook + "/members/";
        band.as(band.lena).delete(members + band.jonas.id).problem(403, "owner-only");
        band.as(band.lena)
                .delete(members + band.lena.id.toUpperCase(java.util.Locale.ROOT))
                .expect(204);
        band.as(band.lena).delete(members + band.lena.id).problem(404, "no-such-notebook");
        band.as(band.ada).delete(members + band.lena.id).problem(404, "no-such-member");
        band.as(band.ada).delete(members + band.ada.id).problem(409, "last-owner");
        band.as(band.ada).put(members + band.ada.id, "{'may':'read'}").problem(409, "last-owner");
        band.as(band.ada).put(members + band.ada.id, "{'may':'rule'}").problem(422, "invalid-content");
        band.as(band.ada).put(members + UUID.randomUUID(), "{'may':'read'}").problem(404, "no-such-player");
        band.as(band.jonas).get("/api/tonight").expect(200);
    }

    @Test
    void a_player_without_any_notebook_can_still_make_one() {
        band.as(band.oskar)
                .put("/api/notebooks/" + band.oskar.notebook + "/members/" + band.jonas.id, "{'may':'own'}")
                .expect(204);
        band.as(band.oskar)
                .delete("/api/notebooks/" + band.oskar.notebook + "/members/" + band.oskar.id)
                .expect(204);
        band.as(band.oskar).get("/api/tonight").problem(404, "no-such-notebook");
        assertTrue(band.as(band.oskar)
                .get("/api/me")
                .expect(200)
                .json()
                .path("notebook")
                .isMissingNode());
        band.as(band.oskar).post("/api/notebooks", "{'title':'Again'}").expect(201);
        band.as(band.oskar).get("/api/tonight").expect(200);
    }

    @Test
    void sessions_are_listed_and_ended_one_by_one_and_all_but_this_one() {
        String first = band.oskar.session;
        band.signIn(band.oskar);
        String second = band.oskar.session;
        band.signIn(band.oskar);
        Band.Caller here = band.as(band.oskar);
        List<JsonNode> sessions = here.get("/api/me/sessions").expect(200).items();
        assertEquals(3, sessions.size());
        assertEquals(
                1,
                sessions.stream()
                        .filter(each -> each.path("current").asBoolean())
                        .count());
        Map<Boolean, List<String>> ids = sessions.stream()
                .collect(Collectors.partitioningBy(
                        each -> each.path("current").asBoolean(),
                        Collectors.mapping(each -> each.path("id").asText(), Collectors.toList())));
        here.delete("/api/me/sessions/" + ids.get(false).get(0)).expect(204);
        here.delete("/api/me/sessions/" + ids.get(false).get(0)).problem(404, "no-such-session");
        Answer hers =
                band.as(band.ada).delete("/api/me/sessions/" + ids.get(true).get(0));
        Answer never = band.as(band.ada).delete("/api/me/sessions/" + UUID.randomUUID());
        Likeness.assertAlike(hers, never, "another player's session");
        assertEquals(2, here.get("/api/me/sessions").items().size());
        here.delete("/api/me/sessions").expect(204);
        assertEquals(1, here.get("/api/me/sessions").items().size());
        for (String ended : List.of(first, second)) {
            band.new Caller(ended).get("/api/me").problem(401, "sign-in-needed");
        }
        here.delete("/api/me/sessions/" + ids.get(true).get(0)).expect(204);
        here.get("/api/me").problem(401, "sign-in-needed");
    }

    @Test
    void a_session_ends_after_thirty_days_and_when_one_signs_out() {
        band.clock.pass(Duration.ofDays(30).minusSeconds(1));
        band.as(band.ada).get("/api/me").expect(200);
        band.clock.pass(Duration.ofSeconds(1));
        band.as(band.ada).get("/api/me").problem(401, "sign-in-needed");
        band.signIn(band.ada);
        Answer out = band.as(band.ada).form("/sign-out", Map.of()).expect(303);
        assertTrue(out.header("Set-Cookie").contains("Expires=Thu, 01 Jan 1970"), out.header("Set-Cookie"));
        band.as(band.ada).get("/api/me").problem(401, "sign-in-needed");
    }

    @Test
    void signing_in_or_joining_in_the_same_browser_ends_the_session_it_had() {
        String ada = band.ada.session;
        Answer again = band.as(band.ada)
                .form("/sign-in", Map.of("name", "Ada", "passphrase", band.ada.passphrase))
                .expect(303);
        band.new Caller(ada).get("/api/me").problem(401, "sign-in-needed");
        String second = Band.session(again);
        band.new Caller(second).get("/api/me").expect(200);
        Answer wrong = band.new Caller(second)
                .form("/sign-in", Map.of("name", "Ada", "passphrase", "a guess of somebody's"))
                .expect(403);
        assertEquals("", wrong.header("Set-Cookie"));
        band.new Caller(second).get("/api/me").expect(200);
        Answer joined = band.new Caller(second)
                .form(path(invite("Tilda")), Map.of("passphrase", "tilda plays the viola"))
                .expect(303);
        band.new Caller(second).get("/api/me").problem(401, "sign-in-needed");
        band.new Caller(Band.session(joined)).get("/api/me").expect(200);
    }

    private Answer change(Band.Caller caller, String current, String next) {
        return caller.put("/api/me/passphrase", "{'current':'" + current + "','next':'" + next + "'}");
    }

    @Test
    void a_changed_passphrase_ends_the_other_sessions_and_is_asked_for_from_then_on() {
        String elsewhere = band.oskar.session;
        band.signIn(band.oskar);
        Band.Caller here = band.as(band.oskar);
        assertEquals(
                "/next",
                change(here, band.oskar.passphrase, "short")
                        .problem(422, "invalid-content")
                        .path("pointer")
                        .asText());
        assertEquals(
                "/current",
                change(here, "not the one I have", "a new one of my own")
                        .problem(422, "invalid-content")
                        .path("pointer")
                        .asText());
        band.new Caller(elsewhere).get("/api/me").expect(200);
        change(here, band.oskar.passphrase, "a new one of my own").expect(204);
        here.get("/api/me").expect(200);
        band.new Caller(elsewhere).get("/api/me").problem(401, "sign-in-needed");
        signIn("Oskar", band.oskar.passphrase).expect(403);
        signIn("Oskar", "a new one of my own").expect(303);
    }

    @Test
    void guessing_the_current_passphrase_in_an_open_session_is_slowed_down() {
        Answer answer = null;
        for (int i = 0; i < 6; i++) {
            answer = change(band.as(band.oskar), "a guess of number " + i, "a new one of my own");
        }
        answer.problem(429, "too-many-tries");
        assertTrue(Integer.parseInt(answer.header("Retry-After")) >= 1);
        change(band.as(band.oskar), band.oskar.passphrase, "a new one of my own")
                .problem(429, "too-many-tries");
        band.clock.pass(Duration.ofMinutes(1));
        change(band.as(band.oskar), band.oskar.passphrase, "a new one of my own")
                .expect(204);
    }

    @Test
    void a_name_that_is_nobodys_is_answered_like_a_wrong_passphrase() {
        invite("Tilda");
        List<String> answers = new ArrayList<>();
        for (String name : List.of("Ada", "Nobody", "Tilda", "", "x".repeat(500), "A\u200bda")) {
            Answer answer = signIn(name, "a guess of somebody's").expect(403);
            assertEquals("", answer.header("Set-Cookie"));
            answers.add(answer.text()
                    .replaceAll("value=\"[^\"]*\"", "value=\"\"")
                    .replaceAll(" value(?=[ >])", "")
                    .replace(" value=\"\"", "")
                    .replace(" autofocus", ""));
        }
        assertEquals(Set.of(answers.get(0)), Set.copyOf(answers));
    }

    @Test
    void guessing_is_slowed_down_by_name_and_by_address_for_names_that_are_nobodys_too() {
        for (String name : List.of("Ada", "Nobody")) {
            for (int i = 0; i < 4; i++) {
                signIn(name, "a guess of number " + i).expect(403);
            }
            signIn(name, "a guess of number 5").expect(429);
            assertTrue(Integer.parseInt(signIn(name, "one more").expect(429).header("Retry-After")) >= 1);
        }
        signIn("Ada", band.ada.passphrase).expect(429);
        signIn("Jonas", band.jonas.passphrase).expect(303);
        for (int i = 10; i < 20; i++) {
            signIn("Player " + i, "a guess of somebody's");
        }
        signIn("Jonas", band.jonas.passphrase).expect(429);
        band.clock.pass(Duration.ofMinutes(1));
        signIn("Ada", band.ada.passphrase).expect(303);
    }

    @Test
    void behind_a_proxy_the_address_it_saw_is_counted_and_not_one_that_was_made_up() throws IOException {
        for (boolean isBehindProxy : List.of(true, false)) {
            try (Band other = new Band(isBehindProxy)) {
                for (int i = 0; i < 6; i++) {
                    tryFrom(other, "10.0.0." + i + ", 6.6.6.6", "a guess of somebody's");
                }
                tryFrom(other, "7.7.7.7, 6.6.6.6", other.ada.passphrase).expect(429);
                // Without a proxy the header is whatever the client likes, and is not looked at.
                tryFrom(other, "6.6.6.6, 7.7.7.7", other.ada.passphrase).expect(isBehindProxy ? 303 : 429);
            }
        }
    }

    private static Answer tryFrom(Band band, String forwardedFor, String passphrase) {
        return band.stranger()
                .with("X-Forwarded-For", forwardedFor)
                .form("/sign-in", Map.of("name", "Ada", "passphrase", passphrase));
    }

    @Test
    void another_site_cannot_use_a_players_session_for_anything_that_changes_something() {
        Samples samples = new Samples(band);
        for (String operation : Description.operations()) {
            if (operation.startsWith("GET ")) {
                continue;
            }
            Samples.Sample sample = samples.of(operation, band.ada);
            Band.Caller ada = band.as(band.ada);
            for (String origin : List.of("https://evil.example", "null", "http://127.0.0.1:1")) {
                sample.sendAs(ada.with("Origin", origin)).problem(403, "wrong-origin");
            }
            for (String site : List.of("cross-site", "same-site")) {
                sample.sendAs(ada.with("Sec-Fetch-Site", site)).problem(403, "wrong-origin");
            }
        }
        band.as(band.ada).get("/api/me").expect(200);
    }

    @Test
    void other_pages_cannot_be_opened_by_a_stranger_and_a_share_opens_nothing_else() {
        for (String page : List.of("/", "/rigs", "/players", "/print/sets/x", "/app.js", "/s", "/join")) {
            Answer answer = band.stranger().get(page);
            assertEquals(302, answer.status(), page);
            assertEquals(page.equals("/rigs") ? "/sign-in?to=%2Frigs" : "/sign-in", answer.header("Location"));
        }
        for (String sneaky :
                List.of("/api/players/", "/API/players", "/api//players", "/s/../api/players", "/api/players;x=1")) {
            Answer answer = band.as(band.lena).post(sneaky, "{'name':'Sneaky'}");
            assertNotEquals(201, answer.status(), sneaky);
            assertFalse(band.stranger().get(sneaky).status() == 200, sneaky);
        }
    }

    /** A query that cannot be read would otherwise count as one that says nothing, and the open notebook be written in. */
    @Test
    void a_notebook_that_is_named_wrongly_is_none_and_never_the_open_one() throws IOException {
        try (Api api = new Api()) {
            String piece = "{\"content\":{\"title\":\"Astray\"}}";
            String head = " HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: "
                    + piece.length() + "\r\n\r\n";
            for (String query :
                    List.of("notebook=%zz", "notebook=%", "by=x&notebook=%4", "notebook=a%4g", "limit=%zz")) {
                RawHttp.Reply reply = RawHttp.reply(api, "POST /api/pieces?" + query + head + piece);
                assertEquals(400, reply.status(), query);
                assertTrue(reply.text().contains("/problems/bad-request"), reply.text());
            }
            for (String name : List.of("", "%20", "no-id")) {
                api.post("/api/pieces?notebook=" + name, "{'content':{'title':'Astray'}}")
                        .problem(404, "no-such-notebook");
            }
            api.send(api.to("/api/pieces").header("Rosinbook-Notebook", "")).problem(404, "no-such-notebook");
            assertEquals(List.of(), api.get("/api/pieces?q=100%25").items());
            assertEquals(List.of(), api.get("/api/pieces").items());
        }
    }

    /** Who has signed in since is not to be sent on to the form by a cache. */
    @Test
    void where_somebody_is_sent_at_the_door_is_not_kept() {
        Map<String, String> form = Map.of("name", band.ada.name, "passphrase", band.ada.passphrase);
        for (Answer sent : List.of(
                band.stranger().get("/pieces").expect(302),
                band.stranger().form("/sign-in", form).expect(303),
                band.stranger().form("/sign-out", Map.of()).expect(303))) {
            assertEquals("no-store", sent.header("Cache-Control"), sent.header("Location"));
        }
    }

    @Test
    void at_the_computer_itself_nobody_signs_in_and_every_notebook_is_ones_own() {
        try (Api api = new Api()) {
            JsonNode me = api.get("/api/me").expect(200).json();
            assertTrue(me.path("local").asBoolean() && me.path("keeper").asBoolean());
            assertEquals("", me.path("name").asText());
            JsonNode second =
                    api.post("/api/notebooks", "{'title':'Second'}").expect(201).json();
            assertEquals("own", second.path("may").asText());
            String id = second.path("id").asText();
            api.create("pieces", "{'title':'In the first'}");
            assertEquals(List.of(), api.get("/api/pieces?notebook=" + id).items());
            Answer opened = api.post("/api/notebooks/" + id + "/open", "{}").expect(204);
            String cookie = opened.header("Set-Cookie").replaceAll(";.*", "");
            assertEquals(
                    List.of(),
                    api.send(api.to("/api/pieces").header("Cookie", cookie)).items());
            assertEquals(1, api.get("/api/pieces").items().size());
            api.get("/api/pieces?notebook=" + UUID.randomUUID()).problem(404, "no-such-notebook");
            assertEquals(List.of(), api.get("/api/me/sessions").items());
            api.delete("/api/me/sessions/" + UUID.randomUUID()).problem(404, "no-such-session");
            api.put("/api/me/passphrase", 1, "{'current':'','next':'a passphrase of mine'}")
                    .problem(409, "nobody-signed-in");
            api.post("/api/players", "{'name':'Jonas'}").expect(201);
            assertEquals(1, api.get("/api/players").items().size());
        }
    }
}
