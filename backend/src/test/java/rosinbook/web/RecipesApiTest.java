package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Recipes on top of starting points: {@code /api/recipes/{id}/…}. */
class RecipesApiTest {
    private final Api api = new Api();
    private Gear gear;
    private String piece;
    private String start;
    private String recipe;

    @BeforeEach
    void cook() {
        gear = new Gear(api);
        piece = api.create("pieces", "{'title':'Copper Weather','tempoBpm':120}")
                .id();
        start = api.create("recipes", gear.start(80)).id();
        recipe = api.create("recipes", gear.following("Copper, drive", piece, start, 40))
                .id();
    }

    @AfterEach
    void stop() {
        api.close();
    }

    private JsonNode resolved(String id) {
        return api.get("/api/recipes/" + id + "/resolved").expect(200).json();
    }

    @Test
    void a_recipe_holds_the_exact_revision_it_follows() {
        JsonNode follows = api.get("/api/recipes/" + recipe).content().path("follows");
        assertEquals(Api.json("{'id':'" + start + "','revision':1}"), follows);
    }

    @Test
    void resolving_gives_every_value_with_where_it_comes_from() {
        JsonNode resolved = resolved(recipe);
        assertEquals(80, resolved.at("/settings/straight/parameters/level").asInt());
        assertEquals(40, resolved.at("/settings/voices/warm/parameters/level").asInt());
        assertEquals("Warm strings", resolved.at("/settings/voices/warm/name").asText());
        JsonNode origins = resolved.path("origins");
        assertEquals(
                Api.json("{'from':'start','id':'" + start + "','title':'Everyday','revision':1}"),
                origins.path("/straight/parameters/level"));
        assertEquals(
                Api.json("{'from':'piece','id':'" + recipe + "','title':'Copper, drive','revision':1}"),
                origins.path("/voices/warm/parameters/level"));
        assertEquals(
                Api.json("{'pointer':'/straight/parameters/level','where':['Straight sound','Level'],'text':'80',"
                        + "'unit':'%','from':'start'}"),
                resolved.path("readout").get(1));
    }

    @Test
    void settings_alone_are_the_same_settings_and_nothing_beside_them() {
        JsonNode alone = api.get("/api/recipes/" + recipe + "/resolved?settingsOnly=true")
                .expect(200)
                .json();
        assertEquals(resolved(recipe).path("settings"), alone.path("settings"));
        assertEquals(2, alone.size(), alone.toString());
    }

    @Test
    void note_values_are_told_in_milliseconds_at_the_pieces_tempo() {
        // 60000/120 = 500 ms a quarter; a dotted eighth is three quarters of that (music theory, no source needed).
        assertEquals(
                375.0,
                resolved(recipe)
                        .path("times")
                        .path("/effects/echo/parameters/time")
                        .asDouble(),
                1e-9);
        assertEquals(0, resolved(start).path("times").size(), "a starting point has no tempo");
    }

    @Test
    void an_earlier_revision_resolves_to_what_it_was() {
        api.save("recipes", recipe, 1, gear.following("Copper, drive", piece, start, 99));
        JsonNode first = api.get("/api/recipes/" + recipe + "/resolved?revision=1")
                .expect(200)
                .json();
        assertEquals(40, first.at("/settings/voices/warm/parameters/level").asInt());
        api.get("/api/recipes/" + recipe + "/resolved?revision=9").problem(404, "no-such-revision");
        api.get("/api/recipes/" + recipe + "/resolved?revision=x").problem(400, "bad-request");
    }

    @Test
    void values_outside_the_vocabulary_are_kept_and_flagged() {
        String loud = api.create(
                        "recipes",
                        gear.start(180).replace("'parameters':{'level':60}", "'parameters':{'level':60,'growl':3}"))
                .id();
        JsonNode resolved = resolved(loud);
        assertEquals(180, resolved.at("/settings/straight/parameters/level").asInt());
        assertEquals(
                Api.json(
                        "[{'pointer':'/straight/parameters/level','sentence':'Level usually runs from 0 to 100'},"
                                + "{'pointer':'/voices/warm/parameters/growl','sentence':'The synth\\u0027s sheet does not know this setting'}]"),
                resolved.path("flags"));
        assertEquals(0, resolved(start).path("flags").size());
    }

    @Test
    void followers_are_listed_with_what_they_follow() {
        assertEquals(
                Api.json("[{'id':'" + recipe + "','title':'Copper, drive','pieceTitle':'Copper Weather','follows':1}]"),
                api.get("/api/recipes/" + start + "/followers")
                        .expect(200)
                        .json()
                        .path("items"));
        assertEquals(0, api.get("/api/recipes/" + recipe + "/followers").items().size());
    }

    @Test
    void a_preview_tells_what_would_change_and_saves_nothing() {
        JsonNode followers = api.post("/api/recipes/" + start + "/preview", "{'content':" + gear.start(70) + "}")
                .expect(200)
                .json()
                .path("followers");
        assertEquals(1, followers.size());
        assertEquals("Copper Weather", followers.at("/0/pieceTitle").asText());
        assertEquals(1, followers.at("/0/changes").size());
        assertEquals("80", followers.at("/0/changes/0/was").asText());
        assertEquals("70", followers.at("/0/changes/0/now").asText());
        assertEquals("%", followers.at("/0/changes/0/unit").asText());
        assertEquals(1, api.get("/api/recipes/" + start).revision());
    }

    @Test
    void a_preview_says_who_could_not_follow() {
        String without = gear.start(80).replaceAll("'voices':\\{.*?}}},", "'voices':{},");
        JsonNode follower = api.post("/api/recipes/" + start + "/preview", "{'content':" + without + "}")
                .expect(200)
                .json()
                .at("/followers/0");
        assertTrue(follower.path("problem").asText().contains("name"), follower::toString);
        Answer refused = api.put("/api/recipes/" + start, 1, "{'content':" + without + "}");
        assertTrue(
                refused.problem(422, "invalid-content").path("detail").asText().contains("Copper, drive"));
        assertEquals(1, api.get("/api/recipes/" + start).revision());
        Answer pinned =
                api.put("/api/recipes/" + start, 1, "{'content':" + without + ",'stayPinned':['" + recipe + "']}");
        assertEquals(2, pinned.expect(200).revision());
        assertEquals(
                40,
                resolved(recipe).at("/settings/voices/warm/parameters/level").asInt());
    }

    @Test
    void followers_follow_on_unless_they_stay_pinned() {
        String other = api.create("recipes", gear.following("Copper, plain", piece, start, 30))
                .id();
        Answer saved = api.put(
                        "/api/recipes/" + start,
                        1,
                        "{'content':" + gear.start(70) + ",'by':'Oke','stayPinned':['" + other + "']}")
                .expect(200);
        assertEquals(Api.json("['" + recipe + "']"), saved.json().at("/extras/followedOn"));
        Answer followed = api.get("/api/recipes/" + recipe);
        assertEquals(2, followed.revision());
        assertEquals(2, followed.content().at("/follows/revision").asInt());
        assertEquals("Oke", followed.json().path("savedBy").asText());
        assertEquals(
                70, resolved(recipe).at("/settings/straight/parameters/level").asInt());
        assertEquals(
                40,
                resolved(recipe).at("/settings/voices/warm/parameters/level").asInt());
        assertEquals(1, api.get("/api/recipes/" + other).revision());
        assertEquals(
                80, resolved(other).at("/settings/straight/parameters/level").asInt());
        JsonNode changes = api.get("/api/recipes/" + recipe + "/compare").json().path("changes");
        assertTrue(changes.toString().contains("\"Straight sound\",\"Level\""), changes::toString);
    }

    @Test
    void a_starting_point_that_others_follow_cannot_become_a_pieces_own() {
        String own = gear.start(80).replace("'synth'", "'piece':'" + piece + "','synth'");
        JsonNode problem =
                api.put("/api/recipes/" + start, 1, "{'content':" + own + "}").problem(422, "invalid-content");
        assertEquals("/piece", problem.path("pointer").asText());
        JsonNode preview = api.post("/api/recipes/" + start + "/preview", "{'content':" + own + "}")
                .problem(422, "invalid-content");
        assertEquals("/piece", preview.path("pointer").asText());
    }

    @Test
    void only_a_starting_point_can_be_followed() {
        JsonNode problem = api.post("/api/recipes", "{'content':" + gear.following("Third", piece, recipe, 1) + "}")
                .problem(422, "invalid-content");
        assertEquals("/follows", problem.path("pointer").asText());
        assertTrue(problem.path("detail").asText().contains("not a starting point"));
        String alone = "{'title':'X','follows':{'id':'" + start + "'},'settings':{}}";
        assertEquals(
                "/follows",
                api.post("/api/recipes", "{'content':" + alone + "}")
                        .problem(422, "invalid-content")
                        .path("pointer")
                        .asText());
    }

    @Test
    void a_piece_can_leave_out_what_the_starting_point_has() {
        String without = "{'title':'Dry','piece':'" + piece + "','synth':'" + gear.synth + "','follows':{'id':'" + start
                + "'},'settings':{'effects':{'echo':null}}}";
        Answer dry = api.create("recipes", without);
        assertTrue(dry.content().at("/settings/effects/echo").isNull(), "RFC 7396: null leaves out");
        assertFalse(resolved(dry.id()).at("/settings/effects").has("echo"));
    }
}
