package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.NotFoundResponse;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The pages: one shell for every page address, and the files it is made of. The shell names its files by the edition of all
 * of them, so that a browser asks for each of them once and never again (RFC 8246).
 */
final class PagesResource {
    /** No group is repeated: each round of one is a call within a call, and an address may have thousands. */
    private static final Pattern FILE = Pattern.compile("(?!.*//)/[a-z0-9/-]*[a-z0-9-]\\.(js|css|svg|png|webmanifest)");

    /** As places-rules.js has them. */
    private static final Pattern PAGE =
            Pattern.compile("/|/(tonight|pieces|recipes|setlists|rigs|log|takes|shares|wiring|levels|exercise|people)"
                    + "|/(pieces|recipes|setlists|rigs|instruments|synths|takes|wiring|levels|stage)/[A-Za-z0-9-]+"
                    + "|/compare/(instruments|synths|rigs|pieces|recipes|setlists|log|takes)/[A-Za-z0-9-]+"
                    + "|/new/(instruments|synths|rigs|pieces|recipes|setlists|log)");

    /** Behind links that were handed out every answer says noindex, which only those can obey who may read it (RFC 9309). */
    private static final String ROBOTS = "User-agent: *\nAllow: /s/\nAllow: /join/\nDisallow: /\n";

    private static final List<String> NO_PAGES = List.of("/api/", "/s/", "/join/");
    private static final Map<String, String> TYPES = Map.of(
            "js", "text/javascript; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "svg", "image/svg+xml",
            "png", "image/png",
            "webmanifest", "application/manifest+json");

    private static final String EDITION = "/edition/" + FrontendEdition.current();
    private static final Pattern OF_EDITION = Pattern.compile("(/edition/[0-9a-f]+)(/.*)");

    private final PageFiles files = new PageFiles(EDITION);

    void register(RoutesConfig routes) {
        routes.get("/robots.txt", exchange -> exchange.result(ROBOTS));
        routes.exception(NotFoundResponse.class, this::pageOrProblem);
    }

    /** Whether there is a page at this address. */
    static boolean isPage(String path) {
        return PAGE.matcher(path).matches();
    }

    /** Whether there is a page or a file of one at this address. */
    static boolean isOne(String path) {
        return isPage(path) || FILE.matcher(path).matches();
    }

    /** Not a route for every address: that would hide which addresses exist, and what they can. */
    private void pageOrProblem(NotFoundResponse problem, Context exchange) {
        String path = exchange.path();
        boolean ofPages = !path.equals("/api") && NO_PAGES.stream().noneMatch(path::startsWith);
        boolean reads = exchange.method() == HandlerType.GET;
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
            var ofEdition = OF_EDITION.matcher(path);
            String name = ofEdition.matches() ? ofEdition.group(2) : path;
            PageFiles.PageFile found = files.find(name).orElseThrow(NotFoundResponse::new);
            // A page that was opened before an update may ask for a file of its own edition; it gets what there is.
            boolean staysSo = ofEdition.matches() && ofEdition.group(1).equals(EDITION);
            send(
                    exchange,
                    found,
                    TYPES.get(file.group(1)),
                    staysSo ? "private, max-age=31536000, immutable" : "no-cache");
            return;
        }
        if (!PAGE.matcher(path).matches()) {
            exchange.status(404);
        }
        send(
                exchange,
                files.find("/index.html").orElseThrow(NotFoundResponse::new),
                "text/html; charset=utf-8",
                "no-cache");
    }

    /** Whether If-None-Match names this file's ETag, by weak comparison (RFC 9110, sections 8.8.3.2 and 13.1.2). */
    private static boolean isKnown(Context exchange, PageFiles.PageFile file) {
        String known = Optional.ofNullable(exchange.header("If-None-Match")).orElse("");
        return known.strip().equals("*")
                || Arrays.stream(known.split(","))
                        .map(etag -> etag.strip().replaceFirst("^W/", ""))
                        .anyMatch(etag -> file.etag().equals("W/" + etag));
    }

    private static void send(Context exchange, PageFiles.PageFile file, String type, String caching) {
        exchange.header("Cache-Control", caching);
        if (exchange.statusCode() == 200) {
            // Only here: to whoever knows an ETag that is answered, Javalin itself says 304.
            exchange.header("ETag", file.etag());
            if (isKnown(exchange, file)) {
                exchange.status(304);
                return;
            }
        }
        exchange.result(file.bytes());
        exchange.contentType(type);
    }
}
