package rosinbook.testing;

import java.io.File;
import java.util.Arrays;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Assumptions;

/** What a test needs of the computer it runs on. */
public final class Needs {
    private Needs() {}

    /** A program of a Debian package. */
    public static void program(String program, String debianPackage) {
        boolean isThere = Arrays.stream(System.getenv("PATH").split(File.pathSeparator))
                .anyMatch(folder -> new File(folder, program).canExecute());
        met(isThere, "this test needs " + program + "; install the Debian package " + debianPackage);
    }

    /**
     * Where the need is not met, a player's run skips the test and says why; a run with {@code CI=true} fails it.
     *
     * @param reason what is missing and how to get it
     */
    public static void met(boolean isMet, String reason) {
        if (!isMet && "true".equals(System.getenv("CI"))) {
            Assertions.fail("in CI nothing may be skipped: " + reason);
        }
        if (!isMet) {
            System.out.println("Skipped: " + reason);
        }
        Assumptions.assumeTrue(isMet, reason);
    }
}
