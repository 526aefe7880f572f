package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;

/** The table in the code, the table in the docs and the description of the API are one. */
class LimitsTest {
    private static final Pattern ROW =
            Pattern.compile("(?m)^\\| `([a-z-]+)` \\| (\\d+|closed) \\| ([0-9 ]+) ([a-zA-Z, ]+) \\| (.+) \\|$");

    /** Status, number and unit by type. */
    private static Map<String, String> told() throws IOException {
        Map<String, String> told = new TreeMap<>();
        Matcher rows = ROW.matcher(Files.readString(Path.of("docs/limits.md")));
        while (rows.find()) {
            String number = rows.group(3).replace(" ", "");
            assertEquals(null, told.put(rows.group(1), rows.group(2) + " " + number + " " + rows.group(4)));
        }
        return told;
    }

    private static String status(Limit limit) {
        return limit.bounds() == Limit.Bounds.CONNECTION ? "closed" : "" + PastLimits.status(limit.bounds());
    }

    @Test
    void the_table_in_the_docs_is_the_one_in_the_code() throws IOException {
        Map<String, String> coded = new TreeMap<>();
        for (Limit limit : Limit.values()) {
            coded.put(limit.type(), status(limit) + " " + limit.most() + " " + limit.unit());
        }
        assertEquals(coded, told());
    }

    @Test
    void every_limit_has_a_type_of_its_own() {
        Set<String> types = Arrays.stream(Limit.values()).map(Limit::type).collect(Collectors.toSet());
        assertEquals(Limit.values().length, types.size());
    }

    @Test
    void every_limit_that_is_answered_is_described_and_none_else() {
        JsonNode described = Description.DOCUMENT.at("/components/schemas/PastLimit/properties");
        Set<String> types = new TreeSet<>();
        described.at("/type/enum").forEach(type -> types.add(type.asText()));
        Set<String> coded = Arrays.stream(Limit.values())
                .filter(limit -> limit.bounds() != Limit.Bounds.CONNECTION)
                .map(limit -> "/problems/" + limit.type())
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(coded, types);
        Set<Integer> statuses = StreamSupport.stream(
                        described.at("/status/enum").spliterator(), false)
                .map(JsonNode::asInt)
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(
                Arrays.stream(Limit.Bounds.values())
                        .map(PastLimits::status)
                        .collect(Collectors.toCollection(TreeSet::new)),
                statuses);
    }

    @Test
    void every_limit_says_how_much_and_what_to_do() {
        for (Limit limit : Limit.values()) {
            assertTrue(
                    limit.sentence().matches("[0-9 ]+ [a-zA-Z, ]+ (is|are) the most\\. [A-Z].+[.]"), limit.sentence());
            assertTrue(limit.most() > 0, limit.type());
        }
    }
}
