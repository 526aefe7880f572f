package rosinbook.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The packaged program in a process of its own, serving a folder. */
public final class RunningJar implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/");

    private final Process process;
    private final String address;

    private RunningJar(Process process, String address) {
        this.process = process;
        this.address = address;
    }

    /** The command line of the packaged program. */
    public static List<String> command(String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-jar", "target/rosinbook.jar"));
        command.addAll(List.of(arguments));
        return command;
    }

    /** Starts to serve a folder and waits for the printed address. */
    public static RunningJar serve(Path data) throws IOException {
        Process process = new ProcessBuilder(command("serve", "--port", "0", "--data", data.toString()))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        for (String line = out.readLine(); line != null; line = out.readLine()) {
            Matcher matcher = ADDRESS.matcher(line);
            if (matcher.find()) {
                return new RunningJar(process, matcher.group());
            }
        }
        throw new IllegalStateException("the program ended without printing an address");
    }

    public String address() {
        return address;
    }

    /** Ends it at once, without a chance to tidy up (SIGKILL). */
    public void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** Asks it to stop (SIGTERM) and waits. */
    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(20, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("the program did not stop when asked to");
            }
        } catch (InterruptedException interrupted) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
