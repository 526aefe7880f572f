package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.concurrent.TimeUnit;
import rosinbook.limit.Limit;
import rosinbook.store.Archive;
import rosinbook.store.ArrivedArchive;

/** {@code /api/export} and {@code /api/import}: the whole notebook as one ZIP of readable JSON. */
final class ArchiveResource {
    private final Shelf shelf;
    private final Clock clock;
    private final AtOnce exports = new AtOnce(Limit.EXPORTS_AT_ONCE);
    private final AtOnce sending = new AtOnce(Limit.ARCHIVES_SENT_AT_ONCE);
    private final AtOnce arriving = new AtOnce(Limit.ARCHIVES_ARRIVING_AT_ONCE);
    private final AtOnce imports = new AtOnce(Limit.IMPORTS_AT_ONCE);

    ArchiveResource(Shelf shelf, Clock clock) {
        this.shelf = shelf;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/export", this::export);
        routes.post("/api/import", this::read);
    }

    private void export(Context exchange) throws IOException {
        sending.enter();
        try (ExportFile file = written(shelf.archive(exchange))) {
            exchange.header(
                    "Content-Disposition", "attachment; filename=\"rosinbook-" + LocalDate.now(clock) + ".zip\"");
            exchange.contentType("application/zip");
            exchange.res().setContentLengthLong(file.bytes());
            file.sendTo(exchange.res().getOutputStream());
        } finally {
            sending.leave();
        }
    }

    /** Whoever reads it slowly keeps nobody from having another written, and holds no state of the database. */
    private ExportFile written(Archive archive) {
        exports.enter();
        try {
            return ExportFile.of(archive, Path.of(System.getProperty("java.io.tmpdir")));
        } finally {
            exports.leave();
        }
    }

    private void read(Context exchange) throws IOException {
        if (!Requests.mediaType(exchange).equals("application/zip")) {
            throw Requests.wrongMediaType("Send a ZIP, with Content-Type: application/zip.");
        }
        arriving.enter();
        try (ArrivedArchive arrived = arrived(exchange)) {
            Answers.json(exchange, imported(shelf.archive(exchange), arrived));
        } finally {
            arriving.leave();
        }
    }

    /** Whoever sends it slowly keeps nobody from importing another. */
    private static ArrivedArchive arrived(Context exchange) {
        try {
            return ArrivedArchive.from(exchange.bodyInputStream());
        } catch (IOException cutShort) {
            throw Body.trouble(cutShort).orElseGet(Body::endedEarly);
        }
    }

    private Archive.Imported imported(Archive archive, ArrivedArchive arrived) throws IOException {
        imports.enter();
        try {
            return archive.read(arrived, timed());
        } finally {
            imports.leave();
        }
    }

    private static Runnable timed() {
        long start = System.nanoTime();
        return () -> Limit.IMPORT_SECONDS.check(TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start));
    }
}
