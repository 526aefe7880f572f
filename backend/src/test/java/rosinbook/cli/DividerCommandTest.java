package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class DividerCommandTest {
    /** Common practice, no source: 1.04 V from 7 V; by hand 47 k over 8.2 k. */
    @Test
    void json_has_the_best_pair_and_alternatives() throws Exception {
        Run run = run("--supply", "7", "--target", "1.04", "--json");
        assertEquals(0, run.status(), run.err());
        JsonNode best = Answers.JSON.readTree(run.out()).get("best");
        assertEquals(47_000, best.get("upperOhms").asDouble());
        assertEquals(8200, best.get("lowerOhms").asDouble());
        assertEquals(7 * 8.2 / 55.2, best.get("volts").asDouble(), 1e-12);
        assertEquals(7 * 8.2 / 55.2 - 1.04, best.get("errorVolts").asDouble(), 1e-12);
        assertEquals("yellow", best.get("upperBands").get(0).asText());
        for (String field : List.of(
                "minVolts",
                "maxVolts",
                "theveninOhms",
                "milliamps",
                "upperMilliwatts",
                "lowerMilliwatts",
                "lowerBands")) {
            assertTrue(best.has(field), field);
        }
        assertEquals(10, Answers.JSON.readTree(run.out()).get("alternatives").size());
    }

    @Test
    void plain_text_names_the_rings_and_the_caution() {
        Run run = run("--supply", "7", "--target", "1.04", "--load", "100000", "--series", "e96", "--tolerance", "1");
        assertEquals(0, run.status(), run.err());
        assertTrue(run.out().contains("Best pair: upper "), run.out());
        assertTrue(run.out().contains("unplugged"), run.out());
    }

    @Test
    void plain_text_writes_ohms_without_exponent() {
        assertTrue(run("--supply", "7", "--target", "1.04", "--max-milliamps", "0.02")
                .out()
                .contains("      470000        82000"));
    }

    @Test
    void a_negative_rail_gives_a_negative_voltage() throws Exception {
        Run run = run("--supply=-7", "--target=-1.04", "--json");
        assertEquals(
                -7 * 8.2 / 55.2,
                Answers.JSON.readTree(run.out()).get("best").get("volts").asDouble(),
                1e-12);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            textBlock =
                    """
            --supply 7 --target 8                     | not below the supply of 7 V
            --supply 7 --target 8                     | The nearest pair within the limits
            --supply 7 --target NaN                   | targetVolts is NaN
            --supply Infinity --target 1              | supplyVolts is Infinity
            --supply 7 --target 1 --series E13        | series is 'E13'; give E6, E12
            --supply 7 --target 1 --load 0            | loadOhms is 0
            --supply 7 --target 1 --tolerance -1      | tolerancePercent is -1
            --supply 7 --target 1 --max-milliamps 0   | maxMilliamps is 0
            --supply 7 --target 1 --rating-milliwatts 0 | ratingMilliwatts is 0
            --supply 7 --target 1.04 --load 100       | allow more current or buffer the load
            --supply 7                                | Missing required option: '--target
            --supply seven --target 1                 | 'seven' is not a double
            """)
    void a_wrong_call_ends_with_status_two_and_a_sentence(String call, String sentence) {
        Run run = run(call.split(" "));
        assertEquals(2, run.status());
        assertEquals("", run.out());
        assertTrue(run.err().contains(sentence), run.err());
        assertTrue(!run.err().contains("\tat "), run.err());
    }

    private record Run(int status, String out, String err) {}

    private static Run run(String... arguments) {
        var out = new StringWriter();
        var err = new StringWriter();
        int status = new CommandLine(new DividerCommand())
                .setOut(new PrintWriter(out, true))
                .setErr(new PrintWriter(err, true))
                .execute(arguments);
        return new Run(status, out.toString(), err.toString());
    }
}
