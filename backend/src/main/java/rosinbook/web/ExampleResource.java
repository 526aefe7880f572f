package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.function.ToIntFunction;
import rosinbook.example.NotebookNotEmpty;
import rosinbook.notebook.SheetStore;

/** {@code /api/example}: fills an empty notebook with the example season. */
final class ExampleResource {
    private final Shelf shelf;
    private final ToIntFunction<SheetStore> writeExample;

    ExampleResource(Shelf shelf, ToIntFunction<SheetStore> writeExample) {
        this.shelf = shelf;
        this.writeExample = writeExample;
    }

    void register(RoutesConfig routes) {
        routes.post("/api/example", this::write);
    }

    private void write(Context exchange) {
        Requests.body(exchange);
        try {
            int sheets = writeExample.applyAsInt(shelf.sheets(exchange));
            exchange.status(201);
            Answers.json(exchange, Answers.object().put("sheets", sheets));
        } catch (NotebookNotEmpty problem) {
            throw new Problem(409, "not-empty", "This notebook is not empty", problem.getMessage());
        }
    }
}
