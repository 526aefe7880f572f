package rosinbook.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.UUID;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;

/** {@code /api/rigs/{id}/strings}: each string's settings through all revisions. */
final class RigsResource {
    private final Shelf shelf;

    RigsResource(Shelf shelf) {
        this.shelf = shelf;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/rigs/{id}/strings", this::strings);
    }

    private void strings(Context exchange) {
        UUID id = Requests.id(exchange);
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> {
            Notebook.find(pages, Kind.RIGS, Reference.newest(id));
            ObjectNode json = Answers.object();
            ObjectNode strings = json.putObject("strings");
            pages.stringHistory(id).forEach((string, settings) -> {
                ArrayNode entries = strings.putArray(Integer.toString(string));
                settings.forEach(setting -> entries.add(entry(setting)));
            });
            return json;
        }));
    }

    private static ObjectNode entry(Pages.StringSetting setting) {
        ObjectNode entry = Answers.object();
        entry.put("revision", setting.revision());
        entry.put("savedAt", setting.savedAt().toString());
        Answers.putIfPresent(entry, "date", setting.date());
        Answers.putIfPresent(entry, "input", setting.input());
        Answers.putIfPresent(entry, "sensitivity", setting.sensitivity());
        entry.put("trimDecibels", setting.trimDecibels());
        return entry;
    }
}
