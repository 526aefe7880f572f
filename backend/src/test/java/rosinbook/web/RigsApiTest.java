package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** A string's settings through the rehearsals, and rigs logged with what happened. */
class RigsApiTest {
    private final Api api = new Api();
    private final Gear gear = new Gear(api);

    @AfterEach
    void stop() {
        api.close();
    }

    @Test
    void a_strings_settings_are_told_through_all_revisions_oldest_first() {
        String rig = api.create("rigs", gear.rig(20, 18)).id();
        api.save("rigs", rig, 1, gear.rig(22, 18).replace("2026-11-10", "2026-11-11"));
        api.save("rigs", rig, 2, gear.rig(22, 18).replace("{'input':2,'sensitivity':18}", "{'trimDecibels':-3}"));
        JsonNode strings =
                api.get("/api/rigs/" + rig + "/strings").expect(200).json().path("strings");
        String saved = "'savedAt':'2026-11-12T20:00:00.123456Z'";
        assertEquals(
                Api.json("[{'revision':1," + saved
                        + ",'date':'2026-11-10','input':1,'sensitivity':20.0,'trimDecibels':0.0},"
                        + "{'revision':2," + saved
                        + ",'date':'2026-11-11','input':1,'sensitivity':22.0,'trimDecibels':0.0},"
                        + "{'revision':3," + saved
                        + ",'date':'2026-11-10','input':1,'sensitivity':22.0,'trimDecibels':0.0}]"),
                strings.path("1"));
        assertEquals(
                Api.json("{'revision':3," + saved + ",'date':'2026-11-10','trimDecibels':-3.0}"),
                strings.path("2").get(2),
                "a string that is not heard has no input and no sensitivity");
        assertEquals(2, strings.size());
    }

    @Test
    void a_rig_is_held_at_the_gear_it_was_made_with() {
        String rig = api.create("rigs", gear.rig(20, 18)).id();
        api.save("instruments", gear.violin, 1, Gear.VIOLIN.replace("Green", "Mossy"));
        assertEquals(
                1,
                api.get("/api/rigs/" + rig).content().at("/instrument/revision").asInt());
        String later = api.create("rigs", gear.rig(20, 18)).id();
        assertEquals(
                2,
                api.get("/api/rigs/" + later)
                        .content()
                        .at("/instrument/revision")
                        .asInt());
    }

    @Test
    void a_rig_is_saved_together_with_a_log_entry_about_exactly_that_revision() {
        String rig = api.create("rigs", gear.rig(20, 18)).id();
        String body = "{'content':" + gear.rig(22, 18) + ",'by':'Mira','reason':'E string too shy','log':"
                + "{'date':'2026-11-12','event':'rehearsal','felt':'good','text':'The E string speaks now.'}}";
        Answer saved = api.put("/api/rigs/" + rig, 1, body).expect(200);
        Answer log =
                api.get("/api/log/" + saved.json().at("/extras/logId").asText()).expect(200);
        assertEquals(
                "Rehearsal: The E string speaks now.", log.json().path("title").asText());
        assertEquals(
                Api.json("{'rigs':{'kind':'rigs','reference':{'id':'" + rig + "','revision':2}}}"),
                log.content().path("about"));
        assertEquals("Mira", log.json().path("savedBy").asText());

        Answer again = api.put("/api/rigs/" + rig, 1, body).expect(200);
        assertEquals(2, again.revision());
        assertEquals(log.id(), again.json().at("/extras/logId").asText());
        assertEquals(1, api.get("/api/log").items().size(), "sent twice, written down once");
    }

    @Test
    void a_new_rig_sent_twice_with_its_log_entry_is_written_down_once() {
        String body = "{'id':'11111111-2222-4333-8444-555555555555','content':" + gear.rig(20, 18)
                + ",'log':{'date':'2026-11-12','text':'First try'}}";
        Answer made = api.post("/api/rigs", body).expect(201);
        assertEquals(made.json(), api.post("/api/rigs", body).expect(201).json());
        assertEquals(1, api.get("/api/log").items().size());
    }

    @Test
    void a_log_entry_that_is_wrong_keeps_the_rig_from_being_saved() {
        String rig = api.create("rigs", gear.rig(20, 18)).id();
        JsonNode problem = api.put(
                        "/api/rigs/" + rig,
                        1,
                        "{'content':" + gear.rig(30, 30) + ",'log':{'date':'2026-11-12','felt':'sad'}}")
                .problem(422, "invalid-content");
        assertEquals("/log/felt", problem.path("pointer").asText());
        assertEquals(1, api.get("/api/rigs/" + rig).revision());
        assertEquals(0, api.get("/api/log").items().size());
    }
}
