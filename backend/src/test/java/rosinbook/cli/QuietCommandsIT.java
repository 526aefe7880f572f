package rosinbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.testing.RunningJar;

/** The packaged program complains of nothing when there is nothing to complain of. */
class QuietCommandsIT {
    @TempDir
    private Path folder;

    @Test
    void what_goes_well_leaves_the_error_output_empty() throws IOException, InterruptedException {
        String zip = folder.resolve("season.zip").toString();
        for (List<String> arguments : List.of(
                List.of("example"),
                List.of("verify"),
                List.of("export", zip),
                List.of("import", zip),
                List.of("backup", folder.resolve("backup.zip").toString()))) {
            List<String> whole = new ArrayList<>(arguments);
            whole.addAll(List.of("--data", folder.resolve("data").toString()));
            RunningJar.Ended ended = RunningJar.run(whole.toArray(String[]::new));
            assertEquals(0, ended.status(), ended.err());
            assertEquals("", ended.err(), arguments.get(0));
        }
    }
}
