package rosinbook.fuzz;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;

/**
 * Looks for input that a parser cannot take, guided by the branches it reaches. By hand, one parser at a time, with {@code
 * JAZZER_FUZZ=1}; see {@code src/test/resources/fuzz/README.md}. What it has found is tried on every build by {@link
 * KeptInputsTest}, without its agent.
 */
class ParsersFuzz {
    private static final String HOW_LONG = "10m";

    @FuzzTest(maxDuration = HOW_LONG)
    void midi(byte[] bytes) throws IOException {
        Parsers.midi(bytes);
    }

    @FuzzTest(maxDuration = HOW_LONG)
    void wav(byte[] bytes) throws IOException {
        Parsers.wav(bytes);
    }

    @FuzzTest(maxDuration = HOW_LONG)
    void archive(byte[] bytes) throws IOException {
        Parsers.archive(bytes);
    }

    @FuzzTest(maxDuration = HOW_LONG)
    void json(byte[] bytes) throws IOException {
        Parsers.json(bytes);
    }
}
