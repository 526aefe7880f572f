package rosinbook.web;

import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.List;
import java.util.Optional;
import rosinbook.store.BackupFolder;
import rosinbook.store.Backups;

/** {@code /api/backups}: those that are kept, and one more now. */
final class BackupsResource {
    private final Optional<Backups> backups;

    /** @param backups empty if none are kept */
    BackupsResource(Optional<Backups> backups) {
        this.backups = backups;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/backups", this::list);
        routes.post("/api/backups", this::make);
    }

    private void list(Context exchange) {
        ObjectNode json = Answers.items(backups.map(Backups::list).orElse(List.of()), BackupsResource::entry);
        json.put("daily", backups.isPresent());
        Answers.json(exchange, json);
    }

    private void make(Context exchange) {
        Requests.body(exchange);
        Backups place = backups.orElseThrow(() -> new Problem(
                409,
                "no-backups",
                "No backups are kept here",
                "Start Rosinbook with --backups FOLDER, or make one with: rosinbook backup"));
        exchange.status(201);
        Answers.json(exchange, entry(place.make()));
    }

    private static ObjectNode entry(BackupFolder.Kept kept) {
        return Answers.object()
                .put("name", kept.name())
                .put("at", kept.at().toString())
                .put("bytes", kept.bytes());
    }
}
