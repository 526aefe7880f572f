package rosinbook.level;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Stream;

/** Programs of the Debian package of the same name; missing ones skip a test on a desk, and fail it in CI. */
final class ExternalTool {
    private ExternalTool() {}

    static void require(String program) {
        boolean isThere = Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(folder -> new File(folder, program).canExecute());
        if (!isThere && "true".equals(System.getenv("CI"))) {
            fail("the Debian package " + program + " is missing, and CI must have it");
        }
        assumeTrue(isThere, "skipped: the Debian package " + program + " is not installed");
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
