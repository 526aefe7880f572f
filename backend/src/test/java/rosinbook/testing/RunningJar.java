package rosinbook.testing;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The packaged program in a process of its own. */
public final class RunningJar implements AutoCloseable {
    private static final Pattern ADDRESS = Pattern.compile("http://127\\.0\\.0\\.1:\\d+/");

    private static final Path JAR = Path.of("target", "rosinbook.jar");
    private static final Path CLASSES = Path.of("target", "rosinbook.jsa");

    private final Process process;
    private final String address;

    private RunningJar(Process process, String address) {
        this.process = process;
        this.address = address;
    }

    /** The command line of the packaged program, in a Java that starts fast rather than runs fast. */
    public static List<String> command(String... arguments) {
        return commandWith("-XX:SharedArchiveFile=" + loadedClasses(), arguments);
    }

    private static List<String> commandWith(String option, String... arguments) {
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                option,
                "-jar",
                JAR.toString()));
        command.addAll(List.of(arguments));
        return command;
    }

    /** The program's classes as a first start has loaded them, which takes a third off the time of all later ones (JEP 350). */
    private static synchronized Path loadedClasses() {
        try {
            boolean isOfThisJar = Files.exists(CLASSES)
                    && Files.getLastModifiedTime(CLASSES).compareTo(Files.getLastModifiedTime(JAR)) > 0;
            if (!isOfThisJar) {
                Files.deleteIfExists(CLASSES);
                Path data = Path.of("target", "first-start");
                List<String> first = commandWith(
                        "-XX:ArchiveClassesAtExit=" + CLASSES,
                        "serve",
                        "--port",
                        "0",
                        "--backups",
                        "off",
                        "--data",
                        data.toString());
                waited(process(first)).stopWithin(120); // it writes the archive at its end
            }
            return CLASSES;
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    /** To start a command line, without what this computer may add to every Java and tell of on the error output. */
    private static ProcessBuilder process(List<String> command) {
        ProcessBuilder process = new ProcessBuilder(command);
        process.environment().remove("JAVA_TOOL_OPTIONS");
        return process;
    }

    /**
     * How a program ended.
     *
     * @param out what it said
     * @param err what it complained of
     */
    public record Ended(int status, String out, String err) {}

    /** Runs a command of the packaged program to its end, which must come within two minutes. */
    public static Ended run(String... arguments) throws IOException, InterruptedException {
        return run(process(command(arguments)));
    }

    /** Runs a program to its end, which must come within two minutes. */
    public static Ended run(ProcessBuilder program) throws IOException, InterruptedException {
        Path out = Files.createTempFile("rosinbook", ".out");
        Path err = Files.createTempFile("rosinbook", ".err");
        try {
            Process process = program.redirectOutput(out.toFile())
                    .redirectError(err.toFile())
                    .start();
            if (!process.waitFor(120, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException(
                        "the program does not end: " + Files.readString(out) + Files.readString(err));
            }
            return new Ended(process.exitValue(), Files.readString(out), Files.readString(err));
        } finally {
            Files.delete(out);
            Files.delete(err);
        }
    }

    /** Starts to serve a folder and does not wait until it does. */
    public static Process begin(Path data) throws IOException {
        return process(command("serve", "--port", "0", "--data", data.toString()))
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                .start();
    }

    /** Starts to serve a folder and waits for the printed address. */
    public static RunningJar serve(Path data, String... more) throws IOException {
        List<String> command = command("serve", "--port", "0", "--data", data.toString());
        command.addAll(List.of(more));
        return of(command);
    }

    /** Starts a command line that serves, and waits for the printed address. */
    public static RunningJar of(List<String> command) throws IOException {
        return waited(process(command));
    }

    /** Starts to serve a PostgreSQL database and waits for the printed address. */
    public static RunningJar serve(PostgresServer.Address database) throws IOException {
        return waited(on(database, "serve", "--port", "0"));
    }

    /** As {@link #serve(PostgresServer.Address)}, reached from elsewhere by its own address, so that people sign in. */
    public static RunningJar servePublicly(PostgresServer.Address database) throws IOException {
        int port = freePort();
        return waited(on(database, "serve", "--port", "" + port, "--public-address", "http://127.0.0.1:" + port));
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /** A command of the packaged program on a PostgreSQL database, to be started. */
    public static ProcessBuilder on(PostgresServer.Address database, String... arguments) {
        List<String> command = command(arguments);
        command.addAll(List.of("--database", database.url()));
        ProcessBuilder process = process(command);
        process.environment().put("ROSINBOOK_DATABASE_USER", database.user());
        process.environment().put("ROSINBOOK_DATABASE_PASSWORD", database.password());
        return process;
    }

    private static RunningJar waited(ProcessBuilder program) throws IOException {
        Process process = program.redirectError(ProcessBuilder.Redirect.INHERIT).start();
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

    /** Asks it to stop (SIGTERM) and does not wait. */
    public void askToStop() {
        process.destroy();
    }

    /** Waits until it has ended by itself; 128 and the signal's number, if a signal ended it. */
    public int exitStatus() throws InterruptedException {
        if (!process.waitFor(30, TimeUnit.SECONDS)) {
            throw new IllegalStateException("the program still runs");
        }
        return process.exitValue();
    }

    /** Asks it to stop (SIGTERM) and waits. */
    @Override
    public void close() {
        stopWithin(40);
    }

    private void stopWithin(int seconds) {
        process.destroy();
        try {
            if (!process.waitFor(seconds, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IllegalStateException("the program did not stop when asked to");
            }
        } catch (InterruptedException interrupted) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
