package rosinbook.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** The files that pages are made of, each read once. Safe for all threads. */
final class PageFiles {
    private final String edition;
    private final Map<String, PageFile> kept = new ConcurrentHashMap<>();

    /** @param edition under which the shell names the others, such as {@code /edition/0123456789ab} */
    PageFiles(String edition) {
        this.edition = edition;
    }

    /** @param etag a weak one: the bytes that are sent may be compressed */
    record PageFile(byte[] bytes, String etag) {}

    /** Nothing is kept of a file that is not there: anybody can ask for as many of those as they like. */
    Optional<PageFile> find(String path) {
        PageFile known = kept.get(path);
        if (known != null) {
            return Optional.of(known);
        }
        Optional<PageFile> found = load(path);
        found.ifPresent(file -> kept.put(path, file));
        return found;
    }

    int kept() {
        return kept.size();
    }

    private Optional<PageFile> load(String path) {
        try (InputStream file = PageFiles.class.getResourceAsStream("/frontend" + path)) {
            if (file == null) {
                return Optional.empty();
            }
            byte[] bytes = path.equals("/index.html") ? ofEdition(file.readAllBytes()) : file.readAllBytes();
            return Optional.of(
                    new PageFile(bytes, "W/\"" + FrontendEdition.hash(bytes).substring(0, 20) + "\""));
        } catch (IOException problem) {
            throw new IllegalStateException("a page's file cannot be read", problem);
        }
    }

    private byte[] ofEdition(byte[] shell) {
        return new String(shell, StandardCharsets.UTF_8)
                .replaceAll("(href|src)=\"(/[^\"]+\\.(?:css|js))\"", "$1=\"" + edition + "$2\"")
                .getBytes(StandardCharsets.UTF_8);
    }
}
