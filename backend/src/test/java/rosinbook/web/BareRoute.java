package rosinbook.web;

import io.javalin.Javalin;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A Javalin server that does nothing but answer the same bytes and headers every time: what a load bench is held against. */
public final class BareRoute {
    /** Written by the server itself. */
    private static final Set<String> OWN =
            Set.of("date", "content-length", "transfer-encoding", "connection", ":status");

    private BareRoute() {}

    /** {@code BareRoute ADDRESS…}: asks each address once, answers {@code /0}, {@code /1} … with what it got; prints where. */
    public static void main(String[] arguments) throws Exception {
        HttpClient client = HttpClient.newHttpClient();
        Javalin javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            config.startup.showOldJavalinVersionWarning = false;
            for (int i = 0; i < arguments.length; i++) {
                HttpResponse<byte[]> model = ask(client, arguments[i]);
                byte[] bytes = model.body();
                Map<String, List<String>> headers = model.headers().map();
                config.routes.get("/" + i, exchange -> {
                    headers.forEach((name, values) -> {
                        if (!OWN.contains(name)) {
                            exchange.header(name, values.get(0));
                        }
                    });
                    exchange.result(bytes);
                });
            }
        });
        javalin.start("127.0.0.1", 0);
        System.out.println("http://127.0.0.1:" + javalin.port());
    }

    private static HttpResponse<byte[]> ask(HttpClient client, String address) {
        try {
            HttpResponse<byte[]> answer =
                    client.send(HttpRequest.newBuilder(URI.create(address)).build(), BodyHandlers.ofByteArray());
            if (answer.statusCode() != 200) {
                throw new IllegalArgumentException(address + " answered " + answer.statusCode());
            }
            return answer;
        } catch (java.io.IOException problem) {
            throw new java.io.UncheckedIOException(problem);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(interrupted);
        }
    }
}
