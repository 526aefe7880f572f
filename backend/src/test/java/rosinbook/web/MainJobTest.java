package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The job from end to end, as two people with two phones would do it: log a rig, compare two sets, share one. */
class MainJobTest {
    @Test
    void log_a_rig_after_a_rehearsal_compare_tonight_with_last_week_and_share_tonight() {
        try (Api notebook = new Api()) {
            notebook.post("/api/example", "{}").expect(201);
            JsonNode tonight = notebook.get("/api/tonight").expect(200).json();
            String setId = tonight.at("/next/id").asText();
            String lastWeek = tonight.at("/previous/id").asText();
            List<String> rigChangesBefore = sentences(tonight.at("/comparison/rig"));

            // After the rehearsal: the set's rig is opened as a copy, string 2 goes up by three, a sentence, saved.
            String rigId = tonight.at("/next/content/rig/id").asText();
            Answer rig = notebook.get("/api/rigs/" + rigId);
            int was = rig.content().at("/assignments/2/sensitivity").asInt();
            ObjectNode changed = rig.content().deepCopy();
            changed.withObject("/assignments/2").put("sensitivity", was + 3);
            changed.put("date", "2026-11-12");
            Answer saved = notebook.put(
                            "/api/rigs/" + rigId,
                            rig.revision(),
                            body(
                                    "content",
                                    changed,
                                    ",'by':'Tilde','reason':'A string too shy',"
                                            + "'log':{'date':'2026-11-12','event':'rehearsal','felt':'good','text':'The A string speaks now.'}}"))
                    .expect(200);
            assertEquals(rig.revision() + 1, saved.revision());

            // The bandmate changes another string from the same copy: both are kept.
            ObjectNode theirs = rig.content().deepCopy();
            int third = theirs.at("/assignments/3/sensitivity").asInt();
            theirs.withObject("/assignments/3").put("sensitivity", third - 1);
            Answer merged = notebook.put("/api/rigs/" + rigId, rig.revision(), body("content", theirs, ",'by':'Oke'}"))
                    .expect(200);
            assertEquals(
                    was + 3, merged.content().at("/assignments/2/sensitivity").asInt());
            assertEquals(
                    third - 1, merged.content().at("/assignments/3/sensitivity").asInt());

            // The log says so on the first page, and the string's history ends in the new number.
            JsonNode later = notebook.get("/api/tonight").json();
            assertEquals(
                    "The A string speaks now.",
                    later.at("/newestLog/content/text").asText());
            assertEquals(
                    saved.revision(),
                    later.at("/newestLog/content/about/rigs/reference/revision").asInt());
            JsonNode history =
                    notebook.get("/api/rigs/" + rigId + "/strings").json().at("/strings/2");
            assertEquals(
                    was + 3,
                    history.path(history.size() - 1).path("sensitivity").asInt());

            // Tonight against last week: last week's set is held at what was played, so the new numbers show.
            JsonNode told = notebook.get("/api/setlists/compare?was=" + lastWeek + "&now=" + setId)
                    .expect(200)
                    .json();
            List<String> rigChanges = sentences(told.path("rig"));
            assertTrue(
                    rigChanges.stream()
                            .anyMatch(line ->
                                    line.startsWith("String 2, sensitivity:") && line.endsWith("> " + (was + 3))),
                    rigChanges::toString);
            assertFalse(rigChanges.equals(rigChangesBefore));
            assertEquals(told, later.path("comparison"));

            // A link for the stand-in, to exactly this: opened without anything else, it shows tonight's pieces.
            Answer set = notebook.get("/api/setlists/" + setId);
            JsonNode share = notebook.post(
                            "/api/shares",
                            "{'kind':'setlists','id':'" + setId + "','revision':" + set.revision()
                                    + ",'name':'For Jonas','expiresAt':'2026-11-14T00:00:00Z'}")
                    .expect(201)
                    .json();
            String link = share.path("url").asText().replace(notebook.address, "");
            String page = notebook.get(link).expect(200).text();
            for (JsonNode item : set.content().path("items")) {
                String title = notebook.get("/api/pieces/" + item.path("piece").asText())
                        .json()
                        .path("title")
                        .asText();
                assertTrue(page.contains(title.replace("'", "&#x27;")), title);
            }
            assertTrue(page.contains(">" + (was + 3) + "<"), "the strings as they are tonight");

            // The concert is played; everything moves on; the link still shows the evening it was made for.
            notebook.post("/api/setlists/" + setId + "/played", set.revision(), "{'by':'Tilde'}")
                    .expect(200);
            changed.withObject("/assignments/2").put("sensitivity", 1);
            notebook.save("rigs", rigId, merged.revision(), changed.toString().replace("'", "\\u0027"));
            assertEquals(page, notebook.get(link).expect(200).text());
            assertEquals(
                    was + 3,
                    notebook.get("/api/rigs/" + rigId + "/revisions/"
                                    + notebook.get("/api/setlists/" + setId)
                                            .content()
                                            .at("/rig/revision")
                                            .asInt())
                            .content()
                            .at("/assignments/2/sensitivity")
                            .asInt());

            // Two days later it opens nothing any more.
            notebook.clock.pass(Duration.ofDays(2));
            notebook.get(link).expect(404);
        }
    }

    private static String body(String name, JsonNode content, String rest) {
        return "{'" + name + "':" + content.toString().replace("'", "\\u0027") + rest;
    }

    private static List<String> sentences(JsonNode rigs) {
        List<String> lines = new ArrayList<>();
        rigs.forEach(rig -> rig.path("changes").forEach(change -> {
            List<String> where = new ArrayList<>();
            change.path("where").forEach(word -> where.add(word.asText()));
            lines.add(String.join(", ", where) + ": " + change.path("was").asText() + " > "
                    + change.path("now").asText());
        }));
        return lines;
    }
}
