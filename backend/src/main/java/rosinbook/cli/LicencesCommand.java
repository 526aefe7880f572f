package rosinbook.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code rosinbook licences}. */
@Command(
        name = "licences",
        mixinStandardHelpOptions = true,
        description = "Lists the libraries in this program, each with its licence.")
final class LicencesCommand implements Runnable {
    @Option(names = "--sbom", description = "The whole bill of materials instead, with checksums, as JSON (CycloneDX).")
    private boolean sbom;

    @Spec
    private CommandSpec spec;

    @Override
    public void run() {
        PrintWriter out = spec.commandLine().getOut();
        if (sbom) {
            out.print(text("/META-INF/sbom/rosinbook.cdx.json"));
        } else {
            out.println("Rosinbook is free software under the MIT licence. It is built on these libraries:");
            out.print(text("/licences.txt"));
        }
        out.flush();
    }

    /** Written by the build, see {@code supply.chain} in pom.xml. */
    private static String text(String resource) {
        try (InputStream file = LicencesCommand.class.getResourceAsStream(resource)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException problem) {
            throw new IllegalStateException("a file of this program cannot be read", problem);
        }
    }
}
