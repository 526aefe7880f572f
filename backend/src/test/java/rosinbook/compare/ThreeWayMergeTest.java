package rosinbook.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;

class ThreeWayMergeTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    private static JsonNode json(String text) {
        try {
            return JSON.readTree(text.replace('\'', '"'));
        } catch (JsonProcessingException problem) {
            throw new IllegalArgumentException(problem);
        }
    }

    @Test
    void edits_of_two_strings_are_both_kept() {
        JsonNode base = json("{'1':{'s':20},'2':{'s':20}}");
        ThreeWayMerge merge =
                ThreeWayMerge.of(base, json("{'1':{'s':22},'2':{'s':20}}"), json("{'1':{'s':20},'2':{'s':18}}"));
        assertTrue(merge.isClean());
        assertEquals(json("{'1':{'s':22},'2':{'s':18}}"), merge.merged());
    }

    @Test
    void two_answers_to_the_same_question_are_a_conflict_that_shows_all_three() {
        ThreeWayMerge merge = ThreeWayMerge.of(json("{'s':20}"), json("{'s':22}"), json("{'s':18}"));
        assertFalse(merge.isClean());
        ThreeWayMerge.Conflict conflict = merge.conflicts().get(0);
        assertEquals("/s", conflict.at().toString());
        assertEquals(
                "20 22 18",
                conflict.base().get() + " " + conflict.theirs().get() + " "
                        + conflict.yours().get());
        assertEquals(json("{'s':22}"), merge.merged(), "theirs stands until the player chooses");
    }

    @Test
    void the_same_edit_twice_is_no_conflict() {
        ThreeWayMerge merge = ThreeWayMerge.of(json("{'s':20}"), json("{'s':22}"), json("{'s':22}"));
        assertTrue(merge.isClean());
        assertEquals(json("{'s':22}"), merge.merged());
    }

    @Test
    void changing_inside_what_the_other_left_out_is_a_conflict_about_the_whole() {
        ThreeWayMerge merge = ThreeWayMerge.of(json("{'v':{'a':1,'b':2}}"), json("{}"), json("{'v':{'a':1,'b':3}}"));
        assertEquals("/v", merge.conflicts().get(0).at().toString());
        assertTrue(merge.conflicts().get(0).theirs().isEmpty());
    }

    @Test
    void a_reference_is_not_mixed_of_what_one_chose_and_how_the_other_held_it() {
        JsonNode base = json("{'follows':{'id':'a','revision':3}}");
        JsonNode followedOn = json("{'follows':{'id':'a','revision':4}}");
        JsonNode moved = json("{'follows':{'id':'b','revision':3}}");
        for (ThreeWayMerge merge :
                List.of(ThreeWayMerge.of(base, followedOn, moved), ThreeWayMerge.of(base, moved, followedOn))) {
            assertEquals("/follows", merge.conflicts().get(0).at().toString());
            assertEquals(1, merge.conflicts().size());
        }
        JsonNode open = json("{'recipe':{'id':'a'}}");
        assertFalse(ThreeWayMerge.of(open, json("{'recipe':{'id':'a','revision':3}}"), json("{'recipe':{'id':'b'}}"))
                .isClean());
    }

    @Test
    void a_wire_that_became_another_kind_of_wire_is_one_edit() {
        JsonNode base = json("{'via':{'via':'straight'}}");
        ThreeWayMerge merge = ThreeWayMerge.of(
                base, json("{'via':{'via':'divider','upper':100}}"), json("{'via':{'via':'preamp','gain':6}}"));
        assertEquals("/via", merge.conflicts().get(0).at().toString());
        assertEquals(json("{'via':{'via':'divider','upper':100}}"), merge.merged());
    }

    @Property(seed = "8017")
    void merging_edits_that_do_not_touch_is_the_same_in_either_order(
            @ForAll("objects") ObjectNode base,
            @ForAll("objects") ObjectNode theirs,
            @ForAll("objects") ObjectNode yours) {
        ThreeWayMerge one = ThreeWayMerge.of(base, theirs, yours);
        ThreeWayMerge other = ThreeWayMerge.of(base, yours, theirs);
        assertEquals(one.isClean(), other.isClean());
        if (one.isClean()) {
            assertEquals(one.merged(), other.merged());
        }
    }

    @Property(seed = "8017")
    void where_only_one_edited_that_edit_is_the_result(
            @ForAll("objects") ObjectNode base, @ForAll("objects") ObjectNode edited) {
        assertEquals(edited, ThreeWayMerge.of(base, base, edited).merged());
        assertEquals(edited, ThreeWayMerge.of(base, edited, base).merged());
    }

    @Property(seed = "8017")
    void edits_of_separate_halves_are_both_kept_whole(
            @ForAll("objects") ObjectNode base,
            @ForAll("objects") ObjectNode left,
            @ForAll("objects") ObjectNode right) {
        ObjectNode start = JSON.createObjectNode();
        start.set("left", base);
        start.set("right", base);
        ObjectNode theirs = start.deepCopy();
        theirs.set("left", left);
        ObjectNode yours = start.deepCopy();
        yours.set("right", right);
        ThreeWayMerge merge = ThreeWayMerge.of(start, theirs, yours);
        assertTrue(merge.isClean());
        assertEquals(left, merge.merged().get("left"));
        assertEquals(right, merge.merged().get("right"));
    }

    @Provide
    Arbitrary<ObjectNode> objects() {
        return JsonTrees.objects();
    }
}
