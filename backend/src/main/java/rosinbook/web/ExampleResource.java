package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.function.IntSupplier;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;

/** {@code /api/example}: fills an empty notebook with the example season. */
final class ExampleResource {
    private final Notebook notebook;
    private final IntSupplier writeExample;

    ExampleResource(Notebook notebook, IntSupplier writeExample) {
        this.notebook = notebook;
        this.writeExample = writeExample;
    }

    void register(RoutesConfig routes) {
        routes.post("/api/example", this::write);
    }

    private void write(Context exchange) {
        Requests.body(exchange);
        if (!notebook.look(Pages::counts).isEmpty()) {
            throw new Problem(
                    409,
                    "not-empty",
                    "This notebook is not empty",
                    "The example goes into an empty notebook only, so that it never mixes with your own sheets.");
        }
        int sheets = writeExample.getAsInt();
        exchange.status(201);
        Answers.json(exchange, Answers.object().put("sheets", sheets));
    }
}
