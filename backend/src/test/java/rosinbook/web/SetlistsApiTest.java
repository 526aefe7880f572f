package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Playing a set, and telling one set against another. */
class SetlistsApiTest {
    private final Api api = new Api();
    private Gear gear;
    private String start;
    private String copper;
    private String gates;
    private String water;
    private String copperRecipe;
    private String gatesRecipe;
    private String rig;

    @BeforeEach
    void prepare() {
        gear = new Gear(api);
        start = api.create("recipes", gear.start(80)).id();
        copper = api.create("pieces", "{'title':'Copper Weather','tempoBpm':120}")
                .id();
        gates = api.create("pieces", "{'title':'Nine Gates'}").id();
        water = api.create("pieces", "{'title':'Low Water'}").id();
        copperRecipe = api.create("recipes", gear.following("Copper, drive", copper, start, 40))
                .id();
        gatesRecipe = api.create("recipes", gear.following("Gates, stomp", gates, start, 50))
                .id();
        rig = api.create("rigs", gear.rig(20, 20)).id();
    }

    @AfterEach
    void stop() {
        api.close();
    }

    private String item(String key, int order, String piece, String recipe) {
        return "'" + key + "':{'order':" + order + ",'piece':'" + piece + "'"
                + (recipe == null ? "" : ",'recipe':{'id':'" + recipe + "'}") + "}";
    }

    private String set(String title, String date, String... items) {
        return "{'title':'" + title + "','date':'" + date + "','place':'Old Tannery','rig':{'id':'" + rig
                + "'},'items':{" + String.join(",", items) + "}}";
    }

    private Answer played(String id) {
        return api.post("/api/setlists/" + id + "/played", 1, "{'by':'Mira'}").expect(200);
    }

    @Test
    void a_played_set_is_held_at_what_was_played() {
        String id = api.create(
                        "setlists",
                        set("First night", "2026-11-05", item("a", 1, copper, copperRecipe), item("b", 2, water, null)))
                .id();
        Answer played = played(id);
        assertEquals(2, played.revision());
        assertEquals("\"r2\"", played.header("ETag"));
        assertEquals("played", played.content().path("state").asText());
        assertEquals("Played", played.json().path("reason").asText());
        JsonNode rigThen = Api.json("{'id':'" + rig + "','revision':1}");
        assertEquals(rigThen, played.content().path("rig"));
        assertEquals(rigThen, played.content().at("/items/a/rig"));
        assertEquals(
                Api.json("{'id':'" + copperRecipe + "','revision':1}"),
                played.content().at("/items/a/recipe"));
        assertEquals(true, played.content().at("/items/b/recipe").isMissingNode());
        assertEquals(
                2,
                api.post("/api/setlists/" + id + "/played", 2, "{}").expect(200).revision(),
                "played once");
    }

    @Test
    void marking_a_set_as_played_builds_on_what_was_seen() {
        String id = api.create("setlists", set("First night", "2026-11-05", item("a", 1, copper, copperRecipe)))
                .id();
        api.post("/api/setlists/" + id + "/played", "{}").problem(428, "revision-needed");
        api.save("setlists", id, 1, set("First evening", "2026-11-05", item("a", 1, copper, copperRecipe)));
        JsonNode problem = api.post("/api/setlists/" + id + "/played", 1, "{}").problem(412, "edited-meanwhile");
        assertEquals("First evening", problem.at("/currentContent/title").asText());
        assertEquals(
                "planned",
                api.get("/api/setlists/" + id).content().path("state").asText());
    }

    @Test
    void what_another_device_adds_to_a_set_that_was_played_meanwhile_is_held_too() {
        String a = item("a", 1, copper, copperRecipe);
        String id = api.create("setlists", set("Night", "2026-11-12", a)).id();
        played(id);
        JsonNode merged = api.save("setlists", id, 1, set("Night", "2026-11-12", a, item("b", 2, gates, gatesRecipe)))
                .content();
        assertEquals("played", merged.path("state").asText());
        assertEquals(1, merged.at("/items/b/recipe/revision").asInt());
        assertEquals(1, merged.at("/items/b/rig/revision").asInt());
    }

    @Test
    void set_against_set_tells_new_left_out_moved_sounds_and_strings() {
        String was = api.create(
                        "setlists",
                        set(
                                "First night",
                                "2026-11-05",
                                item("a", 1, copper, copperRecipe),
                                item("b", 2, gates, gatesRecipe),
                                item("c", 3, water, null)))
                .id();
        played(was);
        String kesh = api.create("pieces", "{'title':'Kesh'}").id();
        api.save("rigs", rig, 1, gear.rig(22, 18));
        api.save("recipes", copperRecipe, 1, gear.following("Copper, drive", copper, start, 45));
        String now = api.create(
                        "setlists",
                        set(
                                "Second night",
                                "2026-11-12",
                                item("a", 1, gates, gatesRecipe),
                                item("b", 2, copper, copperRecipe),
                                item("c", 3, kesh, null)))
                .id();

        JsonNode told = api.get("/api/setlists/compare?was=" + was + "&now=" + now)
                .expect(200)
                .json();

        assertEquals(
                Api.json(
                        "{'id':'" + was
                                + "','revision':2,'title':'First night','date':'2026-11-05','place':'Old Tannery','state':'played'}"),
                told.path("was"));
        assertEquals(1, told.path("rig").size(), "the rig is told once");
        assertEquals(
                Api.json(
                        "[{'pointer':'/assignments/1/sensitivity','where':['String 1','sensitivity'],'change':'changed','was':'20','now':'22','difference':'+2','unit':''},"
                                + "{'pointer':'/assignments/2/sensitivity','where':['String 2','sensitivity'],'change':'changed','was':'20','now':'18','difference':'−2','unit':''}]"),
                told.at("/rig/0/changes"));
        JsonNode pieces = told.path("pieces");
        assertEquals(
                Api.json("['Copper Weather','Kesh','Low Water']"),
                titles(pieces, false),
                "unmoved and equal is not told");
        assertEquals(1, titles(pieces, true).size(), "one was lifted out of its place");
        JsonNode copperTold = pieces.get(0);
        assertEquals("kept", copperTold.path("change").asText());
        assertEquals(
                Api.json(
                        "[{'pointer':'/voices/warm/parameters/level','where':['Warm strings','Level'],'change':'changed','was':'40','now':'45','difference':'+5','unit':'%'}]"),
                copperTold.path("changes"));
        assertEquals("added", pieces.get(1).path("change").asText());
        assertEquals("dropped", pieces.get(2).path("change").asText());
        assertEquals(
                "1 new in the set, 1 left out, 1 moved, 1 change in the sounds, 2 changes on the rig",
                told.path("summary").asText());
        JsonNode all = api.get("/api/setlists/compare?was=" + was + "&now=" + now + "&all=true")
                .json()
                .path("pieces");
        assertEquals(4, all.size());
    }

    private static JsonNode titles(JsonNode pieces, boolean movedOnly) {
        var titles = rosinbook.notebook.ContentJson.strict().createArrayNode();
        pieces.forEach(piece -> {
            if (!movedOnly || piece.path("moved").asBoolean()) {
                titles.add(piece.path("title"));
            }
        });
        return titles;
    }

    @Test
    void a_set_against_itself_tells_nothing() {
        String id = api.create("setlists", set("First night", "2026-11-05", item("a", 1, copper, copperRecipe)))
                .id();
        JsonNode told = api.get("/api/setlists/compare?was=" + id + "&now=" + id + "@1")
                .expect(200)
                .json();
        assertEquals(0, told.path("pieces").size());
        assertEquals(0, told.path("rig").size());
        assertEquals("Nothing changed", told.path("summary").asText());
    }

    @Test
    void two_devices_can_move_and_add_at_the_same_time() {
        String a = item("a", 1, copper, copperRecipe);
        String b = item("b", 2, gates, gatesRecipe);
        String id = api.create("setlists", set("Night", "2026-11-12", a, b)).id();
        api.save("setlists", id, 1, set("Night", "2026-11-12", a, b, item("c", 3, water, null)));
        Answer merged =
                api.save("setlists", id, 1, set("Night", "2026-11-12", a.replace("'order':1", "'order':2.5"), b));
        assertEquals(3, merged.content().path("items").size());
        assertEquals(2.5, merged.content().at("/items/a/order").asDouble());
    }

    @Test
    void moving_a_piece_is_told_as_moved_and_nothing_else() {
        String a = item("a", 1, copper, copperRecipe);
        String b = item("b", 2, gates, gatesRecipe);
        String c = item("c", 3, water, null);
        String id = api.create("setlists", set("Night", "2026-11-12", a, b, c)).id();
        api.save("setlists", id, 1, set("Night", "2026-11-12", a.replace("'order':1", "'order':4"), b, c));
        assertEquals(
                Api.json(
                        "[{'pointer':'/items/a','where':['Copper Weather'],'change':'moved','was':'1st','now':'3rd','unit':''}]"),
                api.get("/api/setlists/" + id + "/compare").json().path("changes"));
    }
}
