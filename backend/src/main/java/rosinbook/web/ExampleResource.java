package rosinbook.web;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import java.util.function.IntSupplier;
import rosinbook.example.NotebookNotEmpty;

/** {@code /api/example}: fills an empty notebook with the example season. */
final class ExampleResource {
    private final IntSupplier writeExample;

    ExampleResource(IntSupplier writeExample) {
        this.writeExample = writeExample;
    }

    void register(RoutesConfig routes) {
        routes.post("/api/example", this::write);
    }

    private void write(Context exchange) {
        Requests.body(exchange);
        try {
            int sheets = writeExample.getAsInt();
            exchange.status(201);
            Answers.json(exchange, Answers.object().put("sheets", sheets));
        } catch (NotebookNotEmpty problem) {
            throw new Problem(409, "not-empty", "This notebook is not empty", problem.getMessage());
        }
    }
}
