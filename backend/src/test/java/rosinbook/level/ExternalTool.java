package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.stream.Stream;
import rosinbook.testing.Needs;

/** Programs of the Debian package of the same name; missing ones skip a test on a desk, and fail it in CI. */
final class ExternalTool {
    private ExternalTool() {}

    static void require(String program) {
        Needs.program(program, program);
    }

    /** Runs a program to its end and gives back what it printed, on both outputs. */
    static String run(String... command) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String printed = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertEquals(0, process.waitFor(), () -> Stream.of(command).toList() + ": " + printed);
        return printed;
    }
}
