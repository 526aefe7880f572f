package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.InputStream;
import java.time.Clock;
import java.time.LocalDate;
import rosinbook.store.Archive;

/** {@code /api/export} and {@code /api/import}: the whole notebook as one ZIP of readable JSON. */
final class ArchiveResource {
    private final Archive archive;
    private final Clock clock;

    ArchiveResource(Archive archive, Clock clock) {
        this.archive = archive;
        this.clock = clock;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/export", this::export);
        routes.post("/api/import", this::read);
    }

    private void export(Context exchange) throws IOException {
        exchange.header("Content-Disposition", "attachment; filename=\"rosinbook-" + LocalDate.now(clock) + ".zip\"");
        exchange.contentType("application/zip");
        archive.export(exchange.res().getOutputStream());
    }

    private void read(Context exchange) throws IOException {
        String type = exchange.contentType();
        if (type == null || !type.equals("application/zip")) {
            throw new Problem(
                    415, "wrong-media-type", "Only a ZIP is read here", "Send Content-Type: application/zip.");
        }
        try (InputStream body = exchange.bodyInputStream()) {
            Archive.Imported imported = archive.read(body);
            Answers.json(exchange, imported);
        }
    }
}
