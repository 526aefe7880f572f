package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HashSet;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.compare.Pointer;
import rosinbook.notebook.ContentJson;

/** Keeping sheets through HTTP: {@code /api/{kind}} and what lies below it. */
class SheetsApiTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    @Test
    void a_new_sheet_is_answered_with_its_address_and_read_back_whole() {
        Answer made = api.create("pieces", "{'title':'The Heron on the Weir','styles':['Reel'],'tempoBpm':120}");
        assertEquals("/api/pieces/" + made.id(), made.header("Location"));
        assertEquals("\"r1\"", made.header("ETag"));
        Answer read = api.get(made.header("Location")).expect(200);
        assertEquals(made.json(), read.json());
        assertEquals("\"r1\"", read.header("ETag"));
        assertEquals("Mira", read.json().path("savedBy").asText());
        assertEquals("for a test", read.json().path("reason").asText());
        assertEquals("2026-11-12T20:00:00.123456Z", read.json().path("savedAt").asText());
        assertEquals(Api.json("['reel']"), read.content().path("styles"));
        assertEquals(
                ContentJson.sha256(ContentJson.canonical(read.content())),
                read.json().path("sha256").asText());
    }

    @Test
    void a_resend_with_the_same_id_changes_nothing() {
        String body = "{'id':'" + UUID.randomUUID() + "','content':{'title':'One'}}";
        Answer first = api.post("/api/pieces", body).expect(201);
        assertEquals(first.json(), api.post("/api/pieces", body).expect(201).json());
        assertEquals(1, api.get("/api/pieces").items().size());
        JsonNode problem = api.post("/api/pieces", body.replace("One", "Two")).problem(422, "invalid-content");
        assertEquals("/id", problem.path("pointer").asText());
    }

    @Test
    void a_resent_rig_is_known_although_its_gear_moved_on() {
        Gear gear = new Gear(api);
        String body = "{'id':'" + UUID.randomUUID() + "','content':" + gear.rig(20, 20) + "}";
        Answer first = api.post("/api/rigs", body).expect(201);
        api.save("instruments", gear.violin, 1, Gear.VIOLIN.replace("Green", "Mossy"));
        assertEquals(first.json(), api.post("/api/rigs", body).expect(201).json());
    }

    @Test
    void a_resent_set_that_was_already_played_is_known() {
        Gear gear = new Gear(api);
        String rig = api.create("rigs", gear.rig(20, 20)).id();
        String piece = api.create("pieces", "{'title':'One'}").id();
        String recipe = api.create("recipes", gear.start(80)).id();
        String item = "'order':1,'piece':'" + piece + "','recipe':{'id':'" + recipe + "'}";
        String body = "{'id':'" + UUID.randomUUID() + "','content':{'title':'Set','date':'2026-11-05','state':'played',"
                + "'rig':{'id':'" + rig + "'},'items':{'a':{" + item + "},'b':{'rig':{'id':'" + rig + "'}," + item
                + "}}}}";
        Answer first = api.post("/api/setlists", body).expect(201);
        assertEquals(1, first.content().at("/rig/revision").asInt());
        assertEquals(first.json(), api.post("/api/setlists", body).expect(201).json());
        api.save("recipes", recipe, 1, gear.start(70));
        api.save("rigs", rig, 1, gear.rig(20, 21));
        assertEquals(first.json(), api.post("/api/setlists", body).expect(201).json(), "although its recipe moved on");
        api.post("/api/setlists", body.replace("'order':1", "'order':2")).problem(422, "invalid-content");
    }

    @Test
    void a_save_builds_on_the_revision_it_names() {
        String id = api.create("pieces", "{'title':'One'}").id();
        Answer saved = api.save("pieces", id, 1, "{'title':'Two'}");
        assertEquals("\"r2\"", saved.header("ETag"));
        assertEquals(2, saved.revision());
        assertEquals(1, saved.json().path("parent").asInt());
        assertEquals("Two", api.get("/api/pieces/" + id).json().path("title").asText());
        assertEquals(
                "One",
                api.get("/api/pieces/" + id + "/revisions/1")
                        .json()
                        .path("title")
                        .asText());
    }

    @Test
    void a_save_that_changes_nothing_keeps_the_revision() {
        String id = api.create("pieces", "{'title':'One'}").id();
        assertEquals(1, api.save("pieces", id, 1, "{'title':'One'}").revision());
    }

    @Test
    void a_save_without_a_revision_is_asked_for_one() {
        String id = api.create("pieces", "{'title':'One'}").id();
        Answer answer = api.send(api.to("/api/pieces/" + id)
                .header("Content-Type", "application/json")
                .PUT(BodyPublishers.ofString("{\"content\":{\"title\":\"Two\"}}")));
        answer.problem(428, "revision-needed");
        for (String wrong : List.of("*", "r1", "\"1\"", "W/\"r1\"", "\"r0\"", "\"r1\", \"r2\"")) {
            api.send(api.to("/api/pieces/" + id)
                            .header("Content-Type", "application/json")
                            .header("If-Match", wrong)
                            .PUT(BodyPublishers.ofString("{\"content\":{\"title\":\"Two\"}}")))
                    .problem(400, "bad-request");
        }
        assertEquals(1, api.get("/api/pieces/" + id).revision());
    }

    @Test
    void edits_that_do_not_touch_are_both_kept() {
        Gear gear = new Gear(api);
        String id = api.create("rigs", gear.rig(20, 20)).id();
        api.save("rigs", id, 1, gear.rig(22, 20));
        Answer merged = api.save("rigs", id, 1, gear.rig(20, 18));
        assertEquals(3, merged.revision());
        assertEquals(22, merged.content().at("/assignments/1/sensitivity").asInt());
        assertEquals(18, merged.content().at("/assignments/2/sensitivity").asInt());
        assertTrue(merged.json().at("/extras/merged").asBoolean());
        JsonNode theirs = merged.json().at("/extras/mergedWith/0");
        assertEquals(Api.json("['String 1','sensitivity']"), theirs.path("where"));
        assertEquals("20", theirs.path("was").asText());
        assertEquals("22", theirs.path("now").asText());
        assertEquals("+2", theirs.path("difference").asText());
    }

    @Test
    void edits_that_touch_are_refused_with_both_values_and_the_choice_can_be_saved() {
        Gear gear = new Gear(api);
        String id = api.create("rigs", gear.rig(20, 20)).id();
        api.save("rigs", id, 1, gear.rig(22, 20));
        Answer refused = api.put("/api/rigs/" + id, 1, "{'content':" + gear.rig(25, 18) + "}");
        JsonNode problem = refused.problem(412, "edited-meanwhile");
        assertEquals("\"r2\"", refused.header("ETag"));
        assertEquals(2, problem.path("current").asInt());
        assertEquals(22, problem.at("/currentContent/assignments/1/sensitivity").asInt());
        assertEquals(1, problem.path("conflicts").size());
        JsonNode conflict = problem.at("/conflicts/0");
        assertEquals("/assignments/1/sensitivity", conflict.path("pointer").asText());
        assertEquals(Api.json("['String 1','sensitivity']"), conflict.path("where"));
        assertEquals(Api.json("[20,22,25]"), values(conflict, "base", "theirs", "yours"));
        assertEquals(Api.json("['20','22','25']"), values(conflict, "baseText", "theirsText", "yoursText"));
        assertEquals(18, problem.at("/merged/assignments/2/sensitivity").asInt(), "the other edit is kept");
        assertEquals(2, api.get("/api/rigs/" + id).revision(), "nothing was saved");

        ObjectNode chosen = problem.path("merged").deepCopy();
        chosen.withObject("/assignments/1").put("sensitivity", 25);
        Answer saved = api.save("rigs", id, problem.path("current").asInt(), chosen.toString());
        assertEquals(25, saved.content().at("/assignments/1/sensitivity").asInt());
        assertEquals(18, saved.content().at("/assignments/2/sensitivity").asInt());
    }

    private static JsonNode values(JsonNode node, String... names) {
        var values = ContentJson.strict().createArrayNode();
        for (String name : names) {
            values.add(node.path(name));
        }
        return values;
    }

    @Test
    void conflicts_tell_other_sheets_by_their_titles_and_settings_by_the_synths_words() {
        Gear gear = new Gear(api);
        String first = api.create("pieces", "{'title':'Copper Weather'}").id();
        String second = api.create("pieces", "{'title':'Nine Gates'}").id();
        String third = api.create("pieces", "{'title':'Low Water'}").id();
        String set = "{'title':'Set','date':'2026-11-12','items':{'a':{'order':1,'piece':'%s'}}}";
        String id = api.create("setlists", set.formatted(first)).id();
        api.save("setlists", id, 1, set.formatted(second));
        JsonNode conflict = api.put("/api/setlists/" + id, 1, "{'content':" + set.formatted(third) + "}")
                .problem(412, "edited-meanwhile")
                .at("/conflicts/0");
        assertEquals(
                Api.json("['Copper Weather','Nine Gates','Low Water']"),
                values(conflict, "baseText", "theirsText", "yoursText"));

        String start = api.create("recipes", gear.start(80)).id();
        api.save("recipes", start, 1, gear.start(70));
        JsonNode level = api.put("/api/recipes/" + start, 1, "{'content':" + gear.start(90) + "}")
                .problem(412, "edited-meanwhile")
                .at("/conflicts/0");
        assertEquals(Api.json("['Straight sound','Level']"), level.path("where"));
        assertEquals(Api.json("['80 %','70 %','90 %']"), values(level, "baseText", "theirsText", "yoursText"));
    }

    @Test
    void a_save_sent_again_after_a_lost_answer_is_no_merge() {
        String id = api.create("pieces", "{'title':'One'}").id();
        api.save("pieces", id, 1, "{'title':'Two'}");
        Answer again = api.save("pieces", id, 1, "{'title':'Two'}");
        assertEquals(2, again.revision());
        assertTrue(again.json().path("extras").isMissingNode(), again::text);
    }

    @Test
    void eight_saves_at_once_of_different_strings_are_all_kept() throws Exception {
        String strings = "{'title':'Seven','strings':{'1':{'note':'E5','cents':%d},'2':{'note':'A4','cents':%d},"
                + "'3':{'note':'D4','cents':%d},'4':{'note':'G3','cents':%d},'5':{'note':'C3','cents':%d},"
                + "'6':{'note':'F2','cents':%d},'7':{'note':'Bb1','cents':%d}},'notes':'%s'}";
        Object[] base = {0, 0, 0, 0, 0, 0, 0, ""};
        String id = api.create("instruments", strings.formatted(base)).id();
        List<Callable<Answer>> saves = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            Object[] mine = base.clone();
            mine[i] = i < 7 ? (Object) (i + 1) : "mine";
            saves.add(() -> api.save("instruments", id, 1, strings.formatted(mine)));
        }
        ExecutorService threads = Executors.newFixedThreadPool(8);
        try {
            for (var save : threads.invokeAll(saves)) {
                save.get();
            }
        } finally {
            threads.shutdownNow();
        }
        Answer newest = api.get("/api/instruments/" + id);
        assertEquals(9, newest.revision());
        for (int string = 1; string <= 7; string++) {
            assertEquals(
                    string, newest.content().at("/strings/" + string + "/cents").asInt());
        }
        assertEquals("mine", newest.content().path("notes").asText());
    }

    @Test
    void an_earlier_state_comes_back_as_a_new_revision() {
        String id = api.create("pieces", "{'title':'One'}").id();
        api.save("pieces", id, 1, "{'title':'Two'}");
        Answer restored =
                api.post("/api/pieces/" + id + "/revisions/1/restore", 2, "{}").expect(200);
        assertEquals(3, restored.revision());
        assertEquals("One", restored.json().path("title").asText());
        assertEquals("Back to revision 1", restored.json().path("reason").asText());
        api.post("/api/pieces/" + id + "/revisions/1/restore", 2, "{}").problem(412, "edited-meanwhile");
        api.post("/api/pieces/" + id + "/revisions/1/restore", "{}").problem(428, "revision-needed");
        api.post("/api/pieces/" + id + "/revisions/7/restore", 3, "{}").problem(404, "no-such-revision");
    }

    @Test
    void history_is_read_to_its_end_without_loss_or_doubles() {
        String id = api.create("pieces", "{'title':'Take 1'}").id();
        for (int number = 1; number < 12; number++) {
            api.clock.pass(Duration.ofMinutes(1));
            api.save("pieces", id, number, "{'title':'Take " + (number + 1) + "'}");
        }
        List<Integer> numbers = new ArrayList<>();
        String after = "";
        do {
            Answer page =
                    api.get("/api/pieces/" + id + "/revisions?limit=5" + after).expect(200);
            page.items().forEach(entry -> {
                numbers.add(entry.path("revision").asInt());
                assertFalse(entry.has("content"));
            });
            after = page.json().has("next")
                    ? "&after=" + page.json().path("next").asText()
                    : null;
        } while (after != null);
        assertEquals(List.of(12, 11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1), numbers);
    }

    @Test
    void lists_by_title_are_read_to_their_end_without_loss_or_doubles() {
        List<String> titles = List.of(
                "élan",
                "Éclair",
                "zebra",
                "Zebra",
                "ZEBRA",
                "İstanbul",
                "ıhlamur",
                "ß",
                "Ωmega",
                "ωmega",
                "10",
                "2",
                "same",
                "same",
                "same",
                "\\u202e RTL",
                "\\ud83c\\udfbb fiddle",
                "a b",
                "a  b",
                "%",
                "_");
        HashSet<String> made = new HashSet<>();
        for (String title : titles) {
            made.add(api.create("pieces", "{'title':'" + title + "'}").id());
        }
        assertEquals(titles.size(), made.size());
        List<String> read = readAll("/api/pieces?limit=2");
        assertEquals(made, new HashSet<>(read));
        assertEquals(titles.size(), read.size());
        assertEquals(read, readAll("/api/pieces?limit=200"));
    }

    @Test
    void lists_by_day_go_from_the_newest_to_the_oldest() {
        List<String> days = List.of("2026-11-12", "2026-01-01", "2025-12-31", "2026-11-12", "2026-03-05", "1999-02-28");
        days.forEach(day -> api.create("log", "{'date':'" + day + "','text':'Bow rehaired'}"));
        List<String> ids = readAll("/api/log?limit=2");
        assertEquals(
                List.of("2026-11-12", "2026-11-12", "2026-03-05", "2026-01-01", "2025-12-31", "1999-02-28"),
                ids.stream()
                        .map(id ->
                                api.get("/api/log/" + id).content().path("date").asText())
                        .toList());
        assertEquals(6, new HashSet<>(ids).size());
    }

    @Test
    void a_place_in_a_list_by_day_is_a_day_that_every_database_knows() {
        for (String day : List.of("+9000000-01-01", "-0001-12-31", "+10000-01-01", "today")) {
            byte[] place = (UUID.randomUUID() + " " + day).getBytes(StandardCharsets.UTF_8);
            api.get("/api/setlists?after=" + Base64.getUrlEncoder().encodeToString(place))
                    .problem(400, "bad-request");
        }
    }

    private List<String> readAll(String list) {
        List<String> ids = new ArrayList<>();
        String address = list;
        while (address != null) {
            Answer page = api.get(address).expect(200);
            page.items().forEach(entry -> ids.add(entry.path("id").asText()));
            address = page.json().has("next")
                    ? list + "&after=" + Api.encoded(page.json().path("next").asText())
                    : null;
        }
        return ids;
    }

    @Test
    void lists_are_narrowed_by_words_and_by_style() {
        api.create("pieces", "{'title':'Harbour Static','styles':['Noise'],'composer':'Tilde'}");
        api.create("pieces", "{'title':'Low Water','styles':['noise','slow'],'notes':'100% quiet'}");
        api.create("pieces", "{'title':'Kesh','styles':['jig']}");
        assertEquals(List.of("Harbour Static"), titles("/api/pieces?q=HARB%20tilde"));
        assertEquals(List.of("Low Water"), titles("/api/pieces?q=100%25"));
        assertEquals(List.of(), titles("/api/pieces?q=1__%25"));
        assertEquals(List.of("Harbour Static", "Low Water"), titles("/api/pieces?style=noise"));
        assertEquals(List.of("Harbour Static", "Low Water"), titles("/api/pieces?style=Noise"));
        assertEquals(
                Api.json("[{'style':'jig','pieces':1},{'style':'noise','pieces':2},{'style':'slow','pieces':1}]"),
                api.get("/api/styles").json().path("items"));
    }

    private List<String> titles(String list) {
        return api.get(list).expect(200).items().stream()
                .map(entry -> entry.path("title").asText())
                .toList();
    }

    @Test
    void a_search_over_everything_says_where_the_words_stand() {
        Gear gear = new Gear(api);
        api.create(
                "rigs",
                gear.rig(20, 20)
                        .replace("'assignments'", "'notes':'first line\\nthe wolf note is gone','assignments'"));
        api.create("pieces", "{'title':'Wolf Moon'}");
        List<JsonNode> found = api.get("/api/search?q=wolf").expect(200).items();
        assertEquals(2, found.size());
        JsonNode rig = found.get(0);
        assertEquals("rigs", rig.path("kind").asText());
        assertEquals("the wolf note is gone", rig.path("snippet").asText());
        assertEquals("", found.get(1).path("snippet").asText());
        assertEquals(List.of(), api.get("/api/search?q=wolverine").items());
    }

    @Test
    void long_texts_are_cut_for_lists_without_breaking_a_character() {
        // An emoji is two UTF-16 units; half of one cannot be written as UTF-8 (RFC 3629, section 3).
        for (int before = 78; before <= 80; before++) {
            api.create("log", "{'date':'2026-11-12','text':'" + "x".repeat(before) + "\\ud83c\\udfbb and more'}");
        }
        for (int before = 118; before <= 120; before++) {
            api.create("pieces", "{'title':'P','notes':'" + "x".repeat(before) + "\\ud83c\\udfbb and more'}");
        }
        List<JsonNode> log = api.get("/api/log").expect(200).items();
        assertEquals(3, log.size());
        log.forEach(entry -> {
            String title = entry.path("title").asText();
            assertTrue(title.endsWith("x…") || title.endsWith("\ud83c\udfbb…"), title);
        });
        assertEquals(6, api.get("/api/search?q=xx").expect(200).items().size());
    }

    @Test
    void lists_tell_recipes_followers_and_when_last_played() {
        Gear gear = new Gear(api);
        String piece = api.create("pieces", "{'title':'Kesh'}").id();
        String start = api.create("recipes", gear.start(80)).id();
        String recipe = api.create("recipes", gear.following("Kesh, round", piece, start, 40))
                .id();
        String set = api.create(
                        "setlists",
                        "{'title':'Set','date':'2026-11-05','items':{'a':{'order':1,'piece':'" + piece
                                + "','recipe':{'id':'" + recipe + "'}}}}")
                .id();
        assertFalse(api.get("/api/pieces").items().get(0).path("extras").has("lastPlayed"));
        api.post("/api/setlists/" + set + "/played", 1, "{}").expect(200);
        assertEquals(
                Api.json("{'recipes':1,'lastPlayed':'2026-11-05'}"),
                api.get("/api/pieces").items().get(0).path("extras"));
        List<JsonNode> recipes = api.get("/api/recipes").items();
        assertEquals(
                Api.json("{'followers':1}"), recipes.get(0).path("extras"), "a starting point is not played itself");
        assertEquals(
                Api.json("{'followers':0,'pieceTitle':'Kesh','followsTitle':'Everyday','lastPlayed':'2026-11-05'}"),
                recipes.get(1).path("extras"));
    }

    @Test
    void what_uses_a_sheet_is_told() {
        Gear gear = new Gear(api);
        String rig = api.create("rigs", gear.rig(20, 20)).id();
        JsonNode use = api.get("/api/synths/" + gear.synth + "/used-by")
                .expect(200)
                .items()
                .get(0);
        assertEquals(
                Api.json(
                        "{'id':'" + rig
                                + "','kind':'rigs','title':'Green violin into the stage synth','relation':'synth','revision':1}"),
                use);
    }

    @Test
    void a_comparison_tells_where_was_now_difference_and_unit() {
        Gear gear = new Gear(api);
        String id = api.create("rigs", gear.rig(20, 20)).id();
        api.save("rigs", id, 1, gear.rig(22, 20).replace("'sensitivity':22", "'sensitivity':22,'trimDecibels':-1.5"));
        JsonNode comparison =
                api.get("/api/rigs/" + id + "/compare?was=1&now=2").expect(200).json();
        assertEquals(1, comparison.at("/was/revision").asInt());
        assertEquals(2, comparison.at("/now/revision").asInt());
        assertEquals(
                Api.json("[{'pointer':'/assignments/1/sensitivity','where':['String 1','sensitivity'],"
                        + "'change':'changed','was':'20','now':'22','difference':'+2','unit':''},"
                        + "{'pointer':'/assignments/1/trimDecibels','where':['String 1','trim'],'change':'changed',"
                        + "'was':'0','now':'−1.5','difference':'−1.5','unit':'dB'}]"),
                comparison.path("changes"));
        assertEquals(comparison, api.get("/api/rigs/" + id + "/compare").json(), "the newest against the one before");
        assertEquals(
                Api.json("[]"),
                api.get("/api/rigs/" + id + "/compare?was=2&now=2").json().path("changes"));
        api.get("/api/rigs/" + id + "/compare?was=9").problem(404, "no-such-revision");
        api.get("/api/rigs/" + id + "/compare?was=x").problem(400, "bad-request");
    }

    @Test
    void settings_whose_names_look_like_something_else_are_compared_all_the_same() {
        String recipe = "{'title':'R','settings':{'straight':{'parameters':{'%s':'%s'}}}}";
        for (String name : List.of("note", "id", "carries", "via", "synth")) {
            String id = api.create("recipes", recipe.formatted(name, "one")).id();
            api.save("recipes", id, 1, recipe.formatted(name, "two"));
            JsonNode changes = api.get("/api/recipes/" + id + "/compare")
                    .expect(200)
                    .json()
                    .path("changes");
            assertEquals(1, changes.size());
            assertEquals("one", changes.at("/0/was").asText(), name);
            assertEquals("two", changes.at("/0/now").asText(), name);
        }
    }

    @Test
    void a_comparison_as_a_json_patch_makes_the_newer_content_of_the_older() {
        // RFC 6902, applied by Eclipse Parsson (Jakarta JSON Processing), which knows nothing of this project.
        api.post("/api/example", "{}").expect(201);
        int compared = 0;
        for (String kind : List.of("instruments", "synths", "rigs", "pieces", "recipes", "setlists", "log")) {
            for (JsonNode sheet : api.get("/api/" + kind + "?limit=200").items()) {
                String address = "/api/" + kind + "/" + sheet.path("id").asText();
                int newest = sheet.path("revision").asInt();
                for (int was = 1; was < newest; was++) {
                    Answer patch = api.get(address + "/compare?was=" + was + "&now=" + newest + "&format=patch")
                            .expect(200);
                    assertEquals("application/json-patch+json", patch.header("Content-Type"));
                    JsonNode older = api.get(address + "/revisions/" + was).content();
                    assertEquals(sheet.path("content"), JsonPatches.applied(patch.text(), older));
                    compared++;
                }
            }
        }
        assertTrue(compared > 20, "only " + compared);
    }

    @Test
    void a_title_is_data_whatever_is_in_it() {
        for (String title : List.of(
                "<script>alert(1)</script>",
                "\\u0022 onmouseover=\\u0022x",
                "it\\u0027s & <b>bold</b>",
                "\\u202eesrever",
                "\\ud83c\\udfbb\\ud83d\\udc68\\u200d\\ud83d\\udc69",
                "'; DROP TABLE sheet; --".replace("'", "\\u0027"),
                "../../etc/passwd",
                "${jndi:ldap://x}",
                "%00%0a")) {
            Answer made = api.create("pieces", "{'title':'" + title + "'}");
            String plain = Api.json("['" + title + "']").path(0).asText();
            Answer read = api.get("/api/pieces/" + made.id()).expect(200);
            assertEquals(plain, read.content().path("title").asText());
            assertEquals("application/json", read.header("Content-Type"));
            assertEquals("nosniff", read.header("X-Content-Type-Options"));
            assertTrue(api.get("/api/search?q=" + Api.encoded(plain)).items().stream()
                    .anyMatch(item -> item.path("id").asText().equals(made.id())));
        }
    }

    @Test
    void contents_of_every_kind_are_refused_with_the_place_that_is_wrong() {
        Gear gear = new Gear(api);
        assertPointer("instruments", Gear.VIOLIN.replace("E5", "H9"), "/strings/1/note");
        assertPointer(
                "instruments",
                Gear.VIOLIN.replace("'title'", "'referencePitchHertz':379,'title'"),
                "/referencePitchHertz");
        assertPointer("synths", Gear.SYNTH.replace("'max':100,'step'", "'max':-1,'step'"), "/sensitivityScale/max");
        assertPointer("rigs", gear.rig(20, 20).replace(gear.synth, gear.violin), "/synth");
        assertPointer("rigs", gear.rig(20, 20).replace("2026-11-10", "2026-13-10"), "/date");
        assertPointer("pieces", "{'title':' '}", "/title");
        assertPointer("pieces", "{'title':'One','tempo':120}", "/tempo");
        assertPointer("pieces", "{'title':'One','tempoBpm':'120'}", "/tempoBpm");
        assertPointer(
                "recipes",
                gear.start(80).replace("dotted eighth", "long"),
                "/settings/effects/echo/parameters/time/note");
        assertPointer("recipes", "{'title':'R'}", "/settings");
        assertPointer("setlists", "{'title':'S'}", "/date");
        assertPointer(
                "setlists",
                "{'title':'S','date':'2026-11-12','items':{'a':{'order':1,'piece':'" + gear.violin + "'}}}",
                "/items/a/piece");
        assertPointer("log", "{'date':'2026-11-12','felt':'sad'}", "/felt");
        String midi = "'midi':{'sha256':'" + "0".repeat(64) + "','size':4}";
        assertPointer("takes", "{'title':'T'," + midi + ",'date':'+9000000-01-01'}", "/date");
        assertEquals(List.of(), api.get("/api/pieces").items());
    }

    private void assertPointer(String kind, String content, String pointer) {
        JsonNode problem =
                api.post("/api/" + kind, "{'content':" + content + "}").problem(422, "invalid-content");
        assertEquals(pointer, problem.path("pointer").asText(), problem::toString);
        assertTrue(Pointer.parse(pointer).steps().size() > 0);
    }
}
