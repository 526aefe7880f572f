package rosinbook.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import rosinbook.notebook.ContentJson;

/** A name for all files of the frontend together: it changes whenever one of them does. */
final class FrontendEdition {
    private static final int LENGTH = 12;
    private static final String CURRENT = find();

    private FrontendEdition() {}

    static String current() {
        return CURRENT;
    }

    /** SHA-256, in hexadecimal. */
    static String hash(byte[] bytes) {
        return ContentJson.sha256(bytes);
    }

    private static String find() {
        try {
            URI shell =
                    FrontendEdition.class.getResource("/frontend/index.html").toURI();
            if (!shell.getScheme().equals("jar")) {
                return of(Path.of(shell).getParent());
            }
            try (FileSystem jar = FileSystems.newFileSystem(shell, Map.of())) {
                return of(jar.getPath("/frontend"));
            }
        } catch (IOException | URISyntaxException problem) {
            throw new IllegalStateException("the pages' files cannot be read", problem);
        }
    }

    private static String of(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            List<String> lines = files.filter(Files::isRegularFile)
                    .map(file -> folder.relativize(file) + " " + hash(bytes(file)))
                    .sorted()
                    .toList();
            return hash(String.join("\n", lines).getBytes(StandardCharsets.UTF_8))
                    .substring(0, LENGTH);
        }
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
