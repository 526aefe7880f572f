package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import rosinbook.notebook.ContentJson;

/** The pages: one shell for every page address, and the files it is made of. */
final class PagesResource {
    private static final Pattern FILE = Pattern.compile("/(?:[a-z0-9-]+/)*[a-z0-9-]+\\.(js|css|svg|png|webmanifest)");
    private static final Pattern PAGE = Pattern.compile(
            "/|/(tonight|pieces|recipes|setlists|rigs|gear|instruments|synths|log|takes|shares|wiring|levels|exercise)(/[A-Za-z0-9-]+)?"
                    + "|/setlists/compare|/compare/[a-z]+/[A-Za-z0-9-]+|/stage/[A-Za-z0-9-]+|/new/[a-z]+|/rigs/[A-Za-z0-9-]+/log|/print/[a-z]+/[A-Za-z0-9-]+");
    private static final Map<String, String> TYPES = Map.of(
            "js", "text/javascript; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "svg", "image/svg+xml",
            "png", "image/png",
            "webmanifest", "application/manifest+json");

    private final Map<String, Optional<StaticFile>> files = new ConcurrentHashMap<>();

    private record StaticFile(byte[] bytes, String etag) {}

    void register(RoutesConfig routes) {
        routes.get("/robots.txt", exchange -> exchange.result("User-agent: *\nDisallow: /\n"));
        routes.exception(NotFoundResponse.class, this::pageOrProblem);
    }

    /** Not a route for every address: that would hide which addresses exist, and what they can. */
    private void pageOrProblem(NotFoundResponse problem, Context exchange) {
        String path = exchange.path();
        boolean ofPages = !path.equals("/api") && !path.startsWith("/api/") && !path.startsWith("/s/");
        boolean reads = exchange.method() == HandlerType.GET || exchange.method() == HandlerType.HEAD;
        try {
            if (!ofPages || !reads) {
                throw problem;
            }
            page(exchange, path);
        } catch (NotFoundResponse notThere) {
            Problems.answer(exchange, Problems.refused(notThere));
        }
    }

    private void page(Context exchange, String path) {
        var file = FILE.matcher(path);
        if (file.matches()) {
            StaticFile found = read(path).orElseThrow(NotFoundResponse::new);
            send(exchange, found, TYPES.get(file.group(1)));
            return;
        }
        if (!PAGE.matcher(path).matches()) {
            exchange.status(404);
        }
        send(exchange, read("/index.html").orElseThrow(NotFoundResponse::new), "text/html; charset=utf-8");
    }

    private void send(Context exchange, StaticFile file, String type) {
        exchange.header("ETag", file.etag());
        exchange.header("Cache-Control", "no-cache");
        if (file.etag().equals(exchange.header("If-None-Match"))) {
            exchange.status(304);
            return;
        }
        exchange.result(file.bytes());
        exchange.contentType(type);
    }

    private Optional<StaticFile> read(String path) {
        return files.computeIfAbsent(path, PagesResource::load);
    }

    private static Optional<StaticFile> load(String path) {
        try (InputStream file = PagesResource.class.getResourceAsStream("/frontend" + path)) {
            if (file == null) {
                return Optional.empty();
            }
            byte[] bytes = file.readAllBytes();
            String hash = ContentJson.sha256(new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1));
            return Optional.of(new StaticFile(bytes, "\"" + hash.substring(0, 20) + "\""));
        } catch (IOException problem) {
            throw new IllegalStateException("a page's file cannot be read", problem);
        }
    }
}
