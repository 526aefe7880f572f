package rosinbook.web;

import io.javalin.config.RoutesConfig;
import java.io.IOException;
import java.io.InputStream;

/** {@code /api/openapi.json}: the description of this API (OpenAPI 3.1). */
final class OpenApiResource {
    private final byte[] description = description();

    private static byte[] description() {
        try (InputStream file = OpenApiResource.class.getResourceAsStream("/openapi.json")) {
            return file.readAllBytes();
        } catch (IOException problem) {
            throw new IllegalStateException("openapi.json cannot be read", problem);
        }
    }

    void register(RoutesConfig routes) {
        routes.get("/api/openapi.json", exchange -> {
            exchange.result(description);
            exchange.contentType("application/json");
        });
    }
}
