package rosinbook.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rosinbook.limit.Limit;

class ContentJsonTest {
    private static String canonical(String json) {
        return ContentJson.canonical(ContentJson.parse(json.getBytes(StandardCharsets.UTF_8)));
    }

    /** RFC 8785, section 3.2.2 (input) and 3.2.3 (result), from memory of the text; the library is the RFC author's own. */
    @Test
    void canonical_form_is_that_of_the_standards_example() {
        String input = "{\"numbers\":[333333333.33333329,1E30,4.50,2e-3,0.000000000000000000000000001],"
                + "\"string\":\"\\u20ac$\\u000F\\u000aA'\\u0042\\u0022\\u005c\\\\\\\"\\/\","
                + "\"literals\":[null,true,false]}";
        String expected = "{\"literals\":[null,true,false],"
                + "\"numbers\":[333333333.3333333,1e+30,4.5,0.002,1e-27],"
                + "\"string\":\"€$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}";
        assertEquals(expected, canonical(input));
    }

    /** RFC 8785, section 3.2.3: names sort by UTF-16 code units. */
    @Test
    void names_sort_by_utf16_code_units() {
        String input =
                "{\"\\u20ac\":\"Euro Sign\",\"\\r\":\"Carriage Return\",\"\\ufb33\":\"Hebrew Letter Dalet With Dagesh\","
                        + "\"1\":\"One\",\"\\ud83d\\ude00\":\"Emoji: Grinning Face\",\"\\u0080\":\"Control\","
                        + "\"\\u00f6\":\"Latin Small Letter O With Diaeresis\"}";
        String result = canonical(input);
        String[] order = {"Carriage Return", "One", "Control", "Latin Small", "Euro", "Emoji", "Hebrew"};
        for (int i = 1; i < order.length; i++) {
            assertTrue(result.indexOf(order[i - 1]) < result.indexOf(order[i]), result);
        }
    }

    /** SHA-256 of "abc": FIPS 180-4 example. */
    @Test
    void checksum_is_the_published_sha256() {
        assertEquals("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", ContentJson.sha256("abc"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "'' | empty | there is no JSON",
                "{ | cut off | not JSON",
                "{\"a\":1,\"a\":2} | a name twice | Duplicate",
                "{} {} | something after the end | not JSON",
                "{\"a\":NaN} | not a number | not JSON"
            })
    void what_is_not_json_is_refused_with_a_reason(String text, String why, String said) {
        byte[] bytes = text.replace("''", "").getBytes(StandardCharsets.UTF_8);
        var problem = assertThrows(InvalidContent.class, () -> ContentJson.parse(bytes), why);
        assertTrue(problem.getMessage().contains(said), problem.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"a\\u0000b\"", "\"\\ud800\""})
    void text_that_no_database_can_hold_is_refused_where_it_stands(String text) {
        byte[] bytes = ("{\"notes\":{\"x\":" + text + "}}").getBytes(StandardCharsets.UTF_8);
        var problem = assertThrows(InvalidContent.class, () -> ContentJson.parse(bytes));
        assertEquals("/notes/x", problem.pointer());
    }

    @Test
    void nesting_is_limited() {
        byte[] bytes = ("[".repeat(5000) + "]".repeat(5000)).getBytes(StandardCharsets.UTF_8);
        var problem = assertThrows(InvalidContent.class, () -> ContentJson.parse(bytes));
        assertEquals(Optional.of(Limit.JSON_DEPTH), problem.limit());
        assertTrue(problem.getMessage().contains("40 levels"), problem.getMessage());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '\0',
            value = {
                "pieces | {} | /title | empty",
                "pieces | {\"title\":\"x\",\"tempoBpm\":0} | /tempoBpm | give 10 to 400",
                "pieces | {\"title\":\"x\",\"tempoBpm\":\"fast\"} | /tempoBpm | ",
                "pieces | {\"title\":\"x\",\"colour\":1} | /colour | known are",
                "pieces | {\"title\":7} | /title | ",
                "instruments | {\"title\":\"x\",\"strings\":{\"1\":{\"note\":\"E5\"}}} | /strings | 4 to 7",
                "synths | {\"title\":\"x\",\"sensitivityScale\":{\"min\":5,\"max\":1}} | /sensitivityScale/max | above min",
                "setlists | {\"title\":\"x\",\"date\":\"tomorrow\"} | /date | ",
                "rigs | {\"title\":\"x\"} | /instrument | missing",
                "recipes | {\"title\":\"x\",\"settings\":{\"voices\":{\"a\":{}}}} | /settings/voices/a/name | empty"
            })
    void a_wrong_field_is_named_with_what_to_do(String kind, String json, String pointer, String said) {
        var content = ContentJson.parse(json.getBytes(StandardCharsets.UTF_8));
        var problem = assertThrows(
                InvalidContent.class, () -> ContentJson.read(Kind.ofPath(kind).orElseThrow(), content));
        assertEquals(pointer, problem.pointer(), problem.getMessage());
        assertTrue(problem.getMessage().contains(said == null ? "" : said), problem.getMessage());
    }

    @Test
    void whole_numbers_are_the_same_however_they_are_written() {
        assertEquals(canonical("{\"a\":20}"), canonical("{\"a\":20.0}"));
        assertEquals(canonical("{\"a\":20}"), canonical("{\"a\":2e1}"));
    }
}
