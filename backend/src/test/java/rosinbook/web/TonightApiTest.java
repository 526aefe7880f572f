package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.time.Duration;
import java.time.LocalDate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the first page is told. Today is 12 November 2026. */
class TonightApiTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    private JsonNode tonight() {
        return api.get("/api/tonight").expect(200).json();
    }

    private String set(String title, String date) {
        return api.create("setlists", "{'title':'" + title + "','date':'" + date + "','items':{}}")
                .id();
    }

    @Test
    void an_empty_notebook_says_so() {
        assertEquals(Api.json("{'counts':{},'empty':true}"), tonight());
    }

    @Test
    void the_next_set_is_the_first_planned_one_from_today_on() {
        set("In spring", "2027-03-01");
        set("Forgotten", "2026-10-01");
        assertEquals("In spring", tonight().at("/next/title").asText());
        set("Tonight", "2026-11-12");
        assertEquals("Tonight", tonight().at("/next/title").asText());
        assertFalse(tonight().has("previous"));
        assertFalse(tonight().has("comparison"));
    }

    @Test
    void the_next_set_is_found_however_many_are_planned() {
        set("Tonight", "2026-11-12");
        for (int day = 0; day < 200; day++) {
            set("Later", LocalDate.of(2027, 1, 1).plusDays(day).toString());
        }
        assertEquals("Tonight", tonight().at("/next/title").asText());
    }

    @Test
    void a_planned_set_that_was_never_marked_is_better_than_none() {
        set("Older", "2026-09-01");
        set("Forgotten", "2026-10-01");
        assertEquals("Forgotten", tonight().at("/next/title").asText());
    }

    @Test
    void the_set_before_is_the_last_played_one_and_is_compared() {
        for (String date : new String[] {"2026-10-29", "2026-11-05"}) {
            api.post("/api/setlists/" + set("Night of " + date, date) + "/played", 1, "{}")
                    .expect(200);
        }
        set("Tonight", "2026-11-12");
        JsonNode tonight = tonight();
        assertEquals("Night of 2026-11-05", tonight.at("/previous/title").asText());
        assertEquals("Nothing changed", tonight.at("/comparison/summary").asText());
        assertEquals(
                api.get("/api/setlists/compare?was="
                                + tonight.at("/previous/id").asText() + "&now="
                                + tonight.at("/next/id").asText())
                        .json(),
                tonight.path("comparison"));
    }

    @Test
    void a_day_later_yesterdays_plan_gives_way_to_the_next() {
        set("Tonight", "2026-11-12");
        set("In spring", "2027-03-01");
        api.clock.pass(Duration.ofDays(1));
        assertEquals("In spring", tonight().at("/next/title").asText());
    }

    @Test
    void the_players_day_counts_wherever_the_server_stands() {
        set("Tonight", "2026-11-12");
        set("In spring", "2027-03-01");
        assertEquals(
                "Tonight",
                api.get("/api/tonight?day=2026-11-12").json().at("/next/title").asText());
        assertEquals(
                "In spring",
                api.get("/api/tonight?day=2026-11-13").json().at("/next/title").asText());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "today",
                "2026-02-30",
                "12.11.2026",
                "0000-01-01",
                "%2B10000-01-01",
                "-0001-01-01",
                "2026-11-12T20:00"
            })
    void a_day_that_is_none_is_refused(String day) {
        JsonNode problem = api.get("/api/tonight?day=" + day).problem(400, "bad-request");
        assertTrue(problem.path("detail").asText().contains("day is no day of the years 1 to 9999"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0001-01-01", "9999-12-31"})
    void the_first_and_the_last_day_can_be_asked_for(String day) {
        set("Tonight", "2026-11-12");
        assertEquals(
                "Tonight",
                api.get("/api/tonight?day=" + day).json().at("/next/title").asText());
    }

    @Test
    void the_newest_log_line_and_rig_are_at_hand() {
        Gear gear = new Gear(api);
        api.create("rigs", gear.rig(20, 20));
        api.create("log", "{'date':'2026-11-01','text':'Later written, earlier happened'}");
        api.create("log", "{'date':'2026-11-10','text':'Newest'}");
        api.create("log", "{'date':'2026-10-01','text':'Oldest'}");
        JsonNode tonight = tonight();
        assertEquals("Newest", tonight.at("/newestLog/content/text").asText());
        assertEquals("rigs", tonight.at("/rig/kind").asText());
        assertEquals(Api.json("{'instruments':1,'synths':1,'rigs':1,'log':3}"), tonight.path("counts"));
        assertFalse(tonight.path("empty").asBoolean());
    }

    @Test
    void the_example_season_answers_what_changed_since_last_week() {
        assertEquals(
                api.post("/api/example", "{}").expect(201).json().path("sheets").asInt() > 50, true);
        JsonNode tonight = tonight();
        assertEquals("2026-11-12", tonight.at("/next/content/date").asText());
        assertEquals("2026-11-05", tonight.at("/previous/content/date").asText());
        assertTrue(tonight.at("/comparison/pieces").size() > 2);
        assertTrue(tonight.at("/comparison/rig").size() > 0);
        assertFalse(tonight.path("empty").asBoolean());
        JsonNode problem = api.post("/api/example", "{}").problem(409, "not-empty");
        assertTrue(problem.path("detail").asText().contains("only into an empty one"));
    }
}
