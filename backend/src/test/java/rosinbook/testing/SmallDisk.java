package rosinbook.testing;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A file system in memory of a fixed size, for tests that run as root on Linux. Close it when nobody uses it any more. */
public final class SmallDisk implements AutoCloseable {
    private final Path folder;

    private SmallDisk(Path folder) {
        this.folder = folder;
    }

    /** Mounts one at this folder; skips or fails the test where that is not allowed. */
    public static SmallDisk mount(Path folder, int megabytes) throws IOException {
        Needs.program("mount", "mount");
        Files.createDirectories(folder);
        int status = run("mount", "-t", "tmpfs", "-o", "size=" + megabytes + "m", "rosinbook-test", folder.toString());
        Needs.met(status == 0, "this test mounts a small file system; run it as root, with the right to mount");
        return new SmallDisk(folder);
    }

    /** Leaves only so many bytes free, or all but what is used. */
    public void leave(long bytes) throws IOException {
        Path ballast = folder.resolve("ballast");
        Files.deleteIfExists(ballast);
        long take = folder.toFile().getUsableSpace() - bytes;
        try (OutputStream target = Files.newOutputStream(ballast)) {
            byte[] block = new byte[4096];
            for (long written = 0; written < take; written += block.length) {
                target.write(block);
            }
        } catch (IOException fullAlready) {
            // somebody else took the last of it meanwhile
            if (bytes > 0) {
                throw fullAlready;
            }
        }
    }

    public void leaveAll() throws IOException {
        Files.deleteIfExists(folder.resolve("ballast"));
    }

    /** Mounts it again as readable only, or as writable. Nobody may have a file of it open for writing. */
    public void allowWriting(boolean isAllowed) throws IOException {
        if (run("mount", "-o", "remount," + (isAllowed ? "rw" : "ro"), folder.toString()) != 0) {
            throw new IOException(folder + " could not be mounted again");
        }
    }

    private static int run(String... command) throws IOException {
        try {
            Process process = new ProcessBuilder(List.of(command)).inheritIO().start();
            if (!process.waitFor(20, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new IOException(command[0] + " does not end");
            }
            return process.exitValue();
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IOException(interrupted);
        }
    }

    @Override
    public void close() throws IOException {
        if (run("umount", folder.toString()) != 0) {
            throw new IOException(folder + " is still in use");
        }
    }
}
