package rosinbook.web;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.UUID;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;
import rosinbook.readout.FollowerPreview;
import rosinbook.readout.RecipeReadout;

/** {@code /api/recipes/{id}/…}: resolving a recipe, and what depends on a starting point. */
final class RecipesResource {
    private final Shelf shelf;

    RecipesResource(Shelf shelf) {
        this.shelf = shelf;
    }

    void register(RoutesConfig routes) {
        routes.get("/api/recipes/{id}/resolved", this::resolved);
        routes.get("/api/recipes/{id}/followers", this::followers);
        routes.post("/api/recipes/{id}/preview", this::preview);
    }

    private void resolved(Context exchange) {
        UUID id = Requests.id(exchange);
        Integer number = exchange.queryParam("revision") == null ? null : Requests.queryNumber(exchange, "revision", 1);
        boolean settingsOnly = Requests.flag(exchange, "settingsOnly");
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> {
            Revision revision = Notebook.find(pages, Kind.RECIPES, new Reference(id, number));
            RecipeReadout readout = RecipeReadout.of(pages, revision);
            ObjectNode json = Answers.object();
            json.put("revision", revision.number());
            json.set("settings", readout.resolved().json());
            if (settingsOnly) {
                return json;
            }
            json.set("readout", Answers.tree(readout.lines()));
            json.set("origins", Answers.tree(readout.origins()));
            json.set("times", Answers.tree(readout.times()));
            json.set("flags", flags(readout));
            return json;
        }));
    }

    private static ArrayNode flags(RecipeReadout readout) {
        ArrayNode flags = Answers.array();
        readout.lines().stream().filter(line -> line.unusual() != null).forEach(line -> flags.addObject()
                .put("pointer", line.pointer())
                .put("sentence", line.unusual()));
        return flags;
    }

    private void followers(Context exchange) {
        UUID id = Requests.id(exchange);
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> {
            Notebook.find(pages, Kind.RECIPES, Reference.newest(id));
            return Answers.items(FollowerPreview.followers(pages, id), Answers::tree);
        }));
    }

    private void preview(Context exchange) {
        UUID id = Requests.id(exchange);
        ObjectNode body = Requests.body(exchange, "content");
        ObjectNode content = Requests.optional(body, "content")
                .filter(ObjectNode.class::isInstance)
                .map(ObjectNode.class::cast)
                .orElseThrow(() -> new InvalidContent("/content", "content is missing"));
        Answers.json(exchange, shelf.notebook(exchange).look(pages -> preview(pages, id, content)));
    }

    private static ObjectNode preview(Pages pages, UUID id, ObjectNode content) {
        Revision start = Notebook.find(pages, Kind.RECIPES, Reference.newest(id));
        ObjectNode json = Answers.object();
        json.set("followers", Answers.tree(FollowerPreview.of(pages, start, content)));
        return json;
    }
}
