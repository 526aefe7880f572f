package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rosinbook.compare.Pointer;
import rosinbook.fuzz.Odd;

/** A filled notebook, and requests to any of its operations that are good but for something. */
final class OddRequests {
    private static final List<String> OPERATIONS = List.copyOf(Description.operations());
    private static final Pattern PARAMETER = Pattern.compile("\\{([a-z]+)}");

    /** Newest contents by kind; what belongs to the example season, and a take. */
    private final Map<String, List<JsonNode>> sheets = new TreeMap<>();

    private final List<String> ids = new ArrayList<>();
    private final List<String> tokens = new ArrayList<>();
    private final List<byte[]> takes = new ArrayList<>();
    private final byte[] recording;
    private final byte[] archive;
    private final String upload;
    private final Api api;

    /**
     * One request as it goes over the wire.
     *
     * @param operation such as {@code GET /api/{kind}}
     * @param path with its query
     */
    record Odds(String operation, String path, List<String> headers, byte[] body) {
        byte[] bytes() {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            String head = operation.split(" ")[0] + " " + path + " HTTP/1.1\r\n" + String.join("\r\n", headers)
                    + "\r\nConnection: close\r\n\r\n";
            bytes.writeBytes(head.getBytes(StandardCharsets.UTF_8));
            bytes.writeBytes(body);
            return bytes.toByteArray();
        }
    }

    OddRequests(Api api) throws IOException {
        this.api = api;
        api.post("/api/example", "{}").expect(201);
        Path published = Path.of("src/test/resources/published");
        takes.add(Files.readAllBytes(published.resolve("takes/o1_air.over.mid")));
        takes.add(Files.readAllBytes(published.resolve("takes/o1_air.reasonable.mid")));
        String blob = api.send(api.to("/api/blobs")
                        .header("Content-Type", "audio/midi")
                        .POST(BodyPublishers.ofByteArray(takes.get(0))))
                .expect(201)
                .text();
        String rig = api.get("/api/rigs").items().get(0).path("id").asText();
        api.create("takes", "{'title':'Air','midi':" + blob + ",'rig':{'id':'" + rig + "'},'date':'2026-11-11'}");
        for (String kind : List.of("instruments", "synths", "rigs", "pieces", "recipes", "setlists", "log", "takes")) {
            for (JsonNode listed : api.get("/api/" + kind + "?limit=200").items()) {
                String id = listed.path("id").asText();
                ids.add(id);
                sheets.computeIfAbsent(kind, each -> new ArrayList<>())
                        .add(api.get("/api/" + kind + "/" + id).expect(200).json());
            }
        }
        for (String kind : List.of("rigs", "recipes", "setlists")) {
            String id = sheets.get(kind).get(0).path("id").asText();
            tokens.add(api.post("/api/shares", "{'kind':'" + kind + "','id':'" + id + "'}")
                    .expect(201)
                    .json()
                    .path("token")
                    .asText());
        }
        byte[] whole = Files.readAllBytes(published.resolve("levels/reel.wav"));
        recording = java.util.Arrays.copyOf(whole, Math.min(whole.length, 400_000));
        upload = api.send(api.to("/api/bench/levels?later=true")
                        .header("Content-Type", "audio/wav")
                        .POST(BodyPublishers.ofByteArray(whole)))
                .expect(201)
                .json()
                .path("upload")
                .asText();
        archive = api.get("/api/export").expect(200).bytes();
    }

    /** The request that belongs to a seed. */
    Odds of(long seed) {
        Odd odd = new Odd(seed);
        String operation = OPERATIONS.get(odd.up(OPERATIONS.size()));
        if (operation.equals("POST /api/import") || operation.equals("GET /api/export")) {
            operation = odd.once(3) ? operation : OPERATIONS.get(odd.up(OPERATIONS.size()));
        }
        String method = operation.split(" ")[0];
        String template = operation.split(" ")[1];
        JsonNode described = Description.operation(method, template);
        String kind = kind(template, odd);
        JsonNode sheet = odd.any(sheets.get(kind));
        String path = path(template, kind, sheet, odd) + query(described, odd);
        List<String> headers = new ArrayList<>();
        headers.add("Host: " + (odd.once(40) ? Odd.encoded(odd.word()) : "127.0.0.1"));
        if (!api.cookie().isEmpty() && !odd.once(12)) {
            headers.add("Cookie: " + (odd.once(20) ? clean(changed(api.cookie(), odd)) : api.cookie()));
        }
        if (described.toString().contains("parameters/IfMatch")) {
            String tag = odd.once(6)
                    ? clean(odd.word())
                    : "\"r" + Math.max(1, sheet.path("revision").asInt() - odd.up(2)) + "\"";
            headers.add("If-Match: " + tag);
        }
        for (int i = odd.once(6) ? odd.up(5) : 0; i > 0; i--) {
            String name = odd.any(List.of(
                    "Accept",
                    "Authorization",
                    "Rosinbook-Notebook",
                    "Cookie",
                    "Origin",
                    "Sec-Fetch-Site",
                    "Range",
                    "Accept-Encoding",
                    "If-None-Match",
                    "Expect",
                    "X-Forwarded-For",
                    "X-Request-Id",
                    "Upgrade",
                    "Content-Encoding",
                    "X-HTTP-Method-Override",
                    "TE"));
            headers.add(name + ": " + clean(odd.word()));
        }
        byte[] body = new byte[0];
        if (described.has("requestBody") || odd.once(30)) {
            Map<String, String> type = new HashMap<>();
            body = body(described, kind, sheet, odd, type);
            String contentType = odd.once(40) ? clean(odd.word()) : type.get("type");
            headers.add("Content-Type: " + contentType);
            headers.add("Content-Length: " + body.length);
        }
        return new Odds(operation, path, headers, body);
    }

    private static String changed(String text, Odd odd) {
        return new String(odd.changed(text.getBytes(StandardCharsets.US_ASCII)), StandardCharsets.US_ASCII);
    }

    /** Nothing that would end the header, or send more than one. */
    private static String clean(String word) {
        String line = word.replaceAll("[\\r\\n\\x00]", "");
        return line.length() > 2_000 ? line.substring(0, 2_000) : line;
    }

    private String kind(String template, Odd odd) {
        String[] parts = template.split("/");
        return parts.length > 2 && sheets.containsKey(parts[2]) ? parts[2] : odd.any(List.copyOf(sheets.keySet()));
    }

    private String path(String template, String kind, JsonNode sheet, Odd odd) {
        Matcher parameters = PARAMETER.matcher(template);
        StringBuilder path = new StringBuilder();
        while (parameters.find()) {
            String good =
                    switch (parameters.group(1)) {
                        case "kind" -> kind;
                        case "id" -> sheet.path("id").asText();
                        case "number" -> "1";
                        case "token" -> odd.any(tokens);
                        case "upload" -> upload;
                        default -> "x";
                    };
            String used = odd.once(8) ? Odd.encoded(odd.once(2) ? odd.word() : odd.any(ids)) : good;
            parameters.appendReplacement(path, Matcher.quoteReplacement(used.isEmpty() ? "%20" : used));
        }
        return parameters.appendTail(path).toString();
    }

    private String query(JsonNode described, Odd odd) {
        StringBuilder query = new StringBuilder();
        for (JsonNode each : described.path("parameters")) {
            JsonNode parameter = each.has("$ref")
                    ? Pointer.parse(each.path("$ref").asText().substring(1)).in(Description.DOCUMENT)
                    : each;
            boolean needed = parameter.path("required").asBoolean() && !odd.once(8);
            if (parameter.path("in").asText().equals("query") && (needed || odd.once(3))) {
                String name = parameter.path("name").asText();
                String good = new SchemaExamples(odd, ids)
                        .of(parameter.path("schema"))
                        .asText();
                add(query, name, odd.once(3) ? odd.word() : good);
            }
        }
        if (odd.once(15)) {
            add(query, odd.word(), odd.word());
        }
        return query.toString();
    }

    private static void add(StringBuilder query, String name, String text) {
        query.append(query.length() == 0 ? '?' : '&')
                .append(Odd.encoded(name))
                .append('=')
                .append(Odd.encoded(text.length() > 3_000 ? text.substring(0, 3_000) : text));
    }

    private byte[] body(JsonNode described, String kind, JsonNode sheet, Odd odd, Map<String, String> type) {
        List<String> types = new ArrayList<>();
        described.at("/requestBody/content").fieldNames().forEachRemaining(types::add);
        String chosen = types.isEmpty() ? "application/json" : odd.any(types);
        type.put("type", chosen);
        boolean spoil = !odd.once(6);
        return switch (chosen) {
            case "audio/midi" -> spoil ? odd.changed(odd.any(takes)) : odd.any(takes);
            case "audio/wav" -> spoil ? odd.changed(recording) : recording;
            case "application/zip" -> spoil ? odd.changed(archive) : archive;
            case "multipart/form-data" -> {
                type.put("type", "multipart/form-data; boundary=" + (odd.once(10) ? clean(odd.word()) : "edge"));
                byte[] parts = parts(odd);
                yield spoil ? odd.changed(parts) : parts;
            }
            case "application/x-www-form-urlencoded" ->
                (odd.once(3) ? odd.word() : "passphrase=" + odd.word()).getBytes(StandardCharsets.UTF_8);
            default -> json(described.at("/requestBody/content/application~1json/schema"), kind, sheet, odd, spoil);
        };
    }

    private byte[] parts(Odd odd) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        for (int i = odd.up(4); i >= 0; i--) {
            String head = "--edge\r\nContent-Disposition: form-data; name=\"files\"; filename=\""
                    + odd.any(List.of("1.wav", "2 soft.wav", "../../x", "", "a\\\"b"))
                    + "\"\r\nContent-Type: audio/wav\r\n\r\n";
            bytes.writeBytes(head.getBytes(StandardCharsets.UTF_8));
            bytes.write(recording, 0, 2_000);
            bytes.writeBytes("\r\n".getBytes(StandardCharsets.UTF_8));
        }
        bytes.writeBytes("--edge--\r\n".getBytes(StandardCharsets.UTF_8));
        return bytes.toByteArray();
    }

    private byte[] json(JsonNode schema, String kind, JsonNode sheet, Odd odd, boolean spoil) {
        JsonNode good = new SchemaExamples(odd, ids).of(schema.isMissingNode() ? Api.json("{}") : schema);
        if (good instanceof ObjectNode body && body.has("content") && !odd.once(4)) {
            JsonNode known = odd.once(10) ? odd.any(sheets.get(odd.any(List.copyOf(sheets.keySet())))) : sheet;
            body.set("content", known.path("content").deepCopy());
            if (!odd.once(4)) {
                body.retain("content", "by", "reason");
            }
        }
        JsonNode sent = spoil ? odd.changed(good) : good;
        byte[] bytes = odd.once(60) ? deep(odd) : sent.toString().getBytes(StandardCharsets.UTF_8);
        return spoil && odd.once(8) ? odd.changed(bytes) : bytes;
    }

    private static byte[] deep(Odd odd) {
        int depth = odd.any(List.of(39, 40, 41, 100, 10_000));
        String open = odd.once(2) ? "[" : "{\"content\":";
        return (open.repeat(depth) + "1").getBytes(StandardCharsets.UTF_8);
    }

    /** Kinds and ids, for reading everything afterwards. */
    Map<String, List<String>> known(Api api) {
        Map<String, List<String>> known = new LinkedHashMap<>();
        sheets.keySet().forEach(kind -> {
            List<String> all = new ArrayList<>();
            String next = "";
            do {
                JsonNode page = api.get("/api/" + kind + "?limit=200" + next)
                        .expect(200)
                        .json();
                page.path("items").forEach(item -> all.add(item.path("id").asText()));
                next = page.has("next")
                        ? "&after=" + Api.encoded(page.path("next").asText())
                        : "";
            } while (!next.isEmpty());
            known.put(kind, all);
        });
        return known;
    }

    static Path keep(String name, byte[] request) {
        try {
            Path folder = Files.createDirectories(Path.of("target/fuzz"));
            return Files.write(folder.resolve(name), request);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }
}
