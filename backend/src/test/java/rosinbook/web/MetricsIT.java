package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import rosinbook.testing.Needs;

/** The figures as another program reads them: the parser of Prometheus' client library for Python. */
class MetricsIT {
    private static final String READER =
            """
            import sys
            from prometheus_client.parser import text_string_to_metric_families
            families = list(text_string_to_metric_families(sys.stdin.read()))
            print(sum(len(family.samples) for family in families))
            for family in families:
                print(family.type, family.name)
            """;

    /** Debian's own, which finds Debian's packages. */
    private static final String PYTHON =
            Files.isExecutable(Path.of("/usr/bin/python3")) ? "/usr/bin/python3" : "python3";

    private static String read(String text) throws IOException, InterruptedException {
        Process reader = new ProcessBuilder(PYTHON, "-c", READER)
                .redirectErrorStream(true)
                .start();
        try (var in = reader.getOutputStream()) {
            in.write(text.getBytes(StandardCharsets.UTF_8));
        }
        String said = new String(reader.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        return reader.waitFor() == 0 ? said : "refused: " + said;
    }

    private static boolean isThere() throws IOException, InterruptedException {
        return new ProcessBuilder(PYTHON, "-c", "import prometheus_client.parser")
                        .redirectErrorStream(true)
                        .start()
                        .waitFor()
                == 0;
    }

    @Test
    void another_program_reads_as_many_figures_as_we_do() throws Exception {
        Needs.program("python3", "python3");
        Needs.met(isThere(), "this test needs Prometheus' client for Python; install python3-prometheus-client");
        try (Api api = new Api()) {
            api.create("pieces", "{'title':'One'}");
            api.get("/api/metrics").expect(200);
            String text = api.get("/api/metrics").expect(200).text();
            String said = read(text);
            assertEquals(
                    Exposition.parse(text).samples().size() + "",
                    said.lines().findFirst().orElse(""),
                    said);
            assertTrue(said.contains("histogram http_server_requests_seconds\n"), said);
            assertTrue(said.contains("counter rosinbook_saves\n"), said);
            assertTrue(said.contains("gauge rosinbook_database_up\n"), said);
            assertTrue(read("a{b=\"c} 1\n").startsWith("refused"), "it would notice");
        }
    }
}
