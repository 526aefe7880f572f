package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.ParseOptions;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;
import rosinbook.notebook.Kind;

/**
 * The description is valid, whole, and true. Besides what is here, {@link Api} holds every answer of every test in this
 * package against it.
 */
class OpenApiTest {
    private final Api api = new Api();

    @AfterEach
    void stop() {
        api.close();
    }

    @Test
    void it_is_valid_openapi_31() {
        // OpenAPI Specification 3.1, read by Swagger's parser.
        ParseOptions options = new ParseOptions();
        options.setResolve(true);
        SwaggerParseResult read =
                new OpenAPIV3Parser().readContents(api.get("/api/openapi.json").text(), List.of(), options);
        assertEquals(List.of(), read.getMessages() == null ? List.of() : read.getMessages());
        assertTrue(read.isOpenapi31());
        assertEquals(
                Description.DOCUMENT.path("paths").size(),
                read.getOpenAPI().getPaths().size());
    }

    @Test
    void a_broken_description_would_be_noticed() {
        String broken = api.get("/api/openapi.json").text().replace("\"in\": \"path\"", "\"in\": \"road\"");
        SwaggerParseResult read = new OpenAPIV3Parser().readContents(broken, List.of(), new ParseOptions());
        assertFalse(read.getMessages().isEmpty());
    }

    @Test
    void its_schemas_are_valid_json_schema_2020_12() {
        Description.DOCUMENT
                .at("/components/schemas")
                .properties()
                .forEach(schema -> assertEquals(List.of(), Description.faults(schema.getValue()), schema.getKey()));
        assertFalse(Description.faults(Api.json("{'type':'thing'}")).isEmpty());
    }

    @Test
    void every_reference_leads_somewhere_and_everything_is_used() {
        String text = Description.DOCUMENT.toString();
        Set<String> used = new HashSet<>();
        Matcher references = Pattern.compile("\"\\$ref\":\"#/([^\"]+)\"").matcher(text);
        while (references.find()) {
            assertFalse(Description.DOCUMENT.at("/" + references.group(1)).isMissingNode(), references.group(1));
            used.add(references.group(1));
        }
        used.add("components/responses/NotAllowed"); // for every method that an address does not have
        used.add("components/responses/PastLimit"); // for every operation
        used.add("components/responses/NotHttp"); // for every address
        used.add("components/responses/DiskFull"); // for every address that keeps something
        used.add("components/responses/DatabaseAway"); // for every address that needs the database
        used.add("components/securitySchemes/session"); // named by "security", which has no references
        used.add("components/securitySchemes/metricsKey");
        Description.DOCUMENT.path("components").properties().forEach(group -> group.getValue()
                .fieldNames()
                .forEachRemaining(name -> {
                    String place = "components/" + group.getKey() + "/" + name;
                    assertTrue(used.contains(place), place + " is not used");
                }));
    }

    @Test
    void it_describes_every_route_there_is_and_none_that_is_not() {
        Set<String> routes = api.server.javalin().unsafe.internalRouter.allHttpHandlers().stream()
                .map(handler -> handler.endpoint.method + " " + handler.endpoint.path)
                .filter(route -> route.matches("(GET|POST|PUT|DELETE|PATCH) .*") && !route.endsWith(" /robots.txt"))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(routes, Description.operations());
    }

    @Test
    void every_path_parameter_is_described_and_ids_are_unique() {
        Set<String> operationIds = new HashSet<>();
        for (String route : Description.operations()) {
            String[] parts = route.split(" ");
            JsonNode operation = Description.operation(parts[0], parts[1]);
            assertTrue(operationIds.add(operation.path("operationId").asText()), route);
            Set<String> described = new TreeSet<>();
            for (JsonNode parameter : operation.path("parameters")) {
                JsonNode found = parameter.has("$ref")
                        ? Description.DOCUMENT.at(
                                parameter.path("$ref").asText().substring(1))
                        : parameter;
                if (found.path("in").asText().equals("path")) {
                    described.add(found.path("name").asText());
                }
            }
            Set<String> named = Pattern.compile("\\{([a-z]+)}")
                    .matcher(parts[1])
                    .results()
                    .map(match -> match.group(1))
                    .collect(Collectors.toCollection(TreeSet::new));
            assertEquals(named, described, route);
        }
    }

    @Test
    void it_says_how_long_words_to_look_for_may_be_and_how_large_a_file() {
        int found = 0;
        for (String route : Description.operations()) {
            String[] parts = route.split(" ");
            for (JsonNode parameter : Description.operation(parts[0], parts[1]).path("parameters")) {
                if (parameter.path("name").asText().equals("q")) {
                    assertEquals(
                            Limit.QUERY_TEXT.most(),
                            parameter.at("/schema/maxLength").asLong(),
                            route);
                    found++;
                }
            }
        }
        assertEquals(2, found);
        String tooLarge = Description.DOCUMENT
                .at("/components/responses/RecordingTooLarge/description")
                .asText();
        assertTrue(tooLarge.contains("the take than " + (Limit.MIDI_BYTES.most() >> 20) + " MiB"), tooLarge);
    }

    /** Every body may be cut short; Body.endedEarly says so. */
    @Test
    void whatever_reads_a_body_may_say_that_it_was_cut_short() {
        JsonNode cutShort = Body.endedEarly().json("0123456789");
        for (String route : Description.operations()) {
            String[] parts = route.split(" ");
            JsonNode operation = Description.operation(parts[0], parts[1]);
            if (operation.has("requestBody") && parts[1].startsWith("/api/")) {
                JsonNode described = operation.at("/responses/400/$ref");
                assertFalse(described.isMissingNode(), route);
                JsonNode schema = Description.DOCUMENT
                        .at(described.asText().substring(1))
                        .at("/content/application~1problem+json/schema");
                Description.assertFits(schema, cutShort, route);
            }
        }
    }

    /** The keeper's operations are about no notebook; that of who asks tells which is open. */
    @Test
    void a_notebook_may_be_named_wherever_one_is_meant_and_nowhere_else() {
        for (String route : Description.operations()) {
            String[] parts = route.split(" ");
            String right =
                    Description.operation(parts[0], parts[1]).path("x-right").asText();
            boolean meansOne = List.of("read", "write", "own").contains(right) && !parts[1].contains("{notebook}");
            boolean isNamed = Description.DOCUMENT
                    .path("paths")
                    .path(parts[1])
                    .path("parameters")
                    .toString()
                    .contains("NotebookQuery");
            assertEquals(meansOne || parts[1].equals("/api/me"), isNamed, route);
            if (right.equals("keep") && !parts[1].contains("{")) {
                assertFalse(
                        Description.operation(parts[0], parts[1])
                                .at("/responses")
                                .has("404"),
                        route);
            }
        }
    }

    @Test
    void it_knows_every_kind() {
        Set<String> kinds = Arrays.stream(Kind.values()).map(Kind::path).collect(Collectors.toCollection(TreeSet::new));
        Set<String> described = new TreeSet<>();
        Description.DOCUMENT.at("/components/schemas/Kind/enum").forEach(kind -> described.add(kind.asText()));
        assertEquals(kinds, described);
    }

    @Test
    void an_answer_with_a_field_too_many_or_too_few_would_be_noticed() {
        JsonNode schema = Api.json("{'$ref':'#/components/schemas/Sheet'}");
        JsonNode sheet = api.create("pieces", "{'title':'One'}").json();
        Description.assertFits(schema, sheet, "as it is");
        for (String pointer : List.of("", "/content")) {
            ObjectNode more = sheet.deepCopy();
            ((ObjectNode) more.at(pointer)).put("surprise", 1);
            assertThrows(AssertionError.class, () -> Description.assertFits(schema, more, "more"));
        }
        for (String required : List.of("id", "kind", "revision", "savedAt", "content")) {
            ObjectNode less = sheet.deepCopy();
            less.remove(required);
            assertThrows(AssertionError.class, () -> Description.assertFits(schema, less, "less"));
        }
        ObjectNode other = sheet.deepCopy();
        other.put("kind", "rigs");
        assertThrows(AssertionError.class, () -> Description.assertFits(schema, other, "another kind"));
    }

    @Test
    void a_walk_through_the_example_season_finds_everything_as_described() throws IOException {
        api.get("/api/tonight").expect(200);
        api.post("/api/example", "{}").expect(201);
        api.get("/api/tonight").expect(200);
        for (String address : List.of("search?q=the", "styles", "shapes", "openapi.json", "shares")) {
            api.get("/api/" + address).expect(200);
        }
        for (Kind kind : Kind.values()) {
            walk("/api/" + kind.path());
        }
        walkSets();
        walkShares();
        new BenchWalk(api).walk();
        walkDoor();
        Gear gear = new Gear(api);
        String rig = api.create("rigs", gear.rig(20, 20)).id();
        api.save("rigs", rig, 1, gear.rig(22, 20));
        api.save("rigs", rig, 1, gear.rig(20, 22));
        api.post("/api/rigs/" + rig + "/revisions/1/restore", 3, "{}").expect(200);
        api.post("/api/backups", "{}").expect(201);
        api.get("/api/backups").expect(200);
        byte[] zip = api.get("/api/export").expect(200).bytes();
        api.send(api.to("/api/import").header("Content-Type", "application/zip").POST(BodyPublishers.ofByteArray(zip)))
                .expect(200);
        Set<String> notWalked = Description.operations();
        notWalked.removeAll(api.succeeded);
        notWalked.removeAll(walkedByPlayers());
        assertEquals(Set.of(), notWalked);
    }

    /** What only somebody who signed in can do, and what the keeper does for them. */
    private static Set<String> walkedByPlayers() throws IOException {
        try (Band band = new Band()) {
            Samples samples = new Samples(band);
            for (String operation : Description.operations()) {
                boolean isAboutPeople = operation.matches(".* /(api/(me|players|notebooks)|join)(/.*)?");
                Band.Player player = operation.contains("/players") ? band.mira : band.ada;
                if (isAboutPeople) {
                    boolean joins = operation.equals("POST /join/{token}"); // which would end the session
                    samples.of(operation, player).sendAs(joins ? band.stranger() : band.as(player));
                }
            }
            return Set.copyOf(band.succeeded);
        }
    }

    private void walkDoor() {
        api.get("/healthz").expect(200);
        api.get("/api/metrics").expect(200);
        api.get("/sign-in").expect(200);
        HttpRequest.Builder signIn = api.to("/sign-in").header("Content-Type", "application/x-www-form-urlencoded");
        api.send(signIn.copy().POST(BodyPublishers.ofString("name=owner&passphrase=wrong")))
                .expect(403);
        api.setPassphrase("four strings and a bow");
        api.send(signIn.POST(BodyPublishers.ofString("name=owner&passphrase=four+strings+and+a+bow")))
                .expect(303);
        api.send(api.to("/sign-out").POST(BodyPublishers.noBody())).expect(303);
    }

    private void walk(String kind) {
        for (JsonNode sheet : api.get(kind + "?limit=200").expect(200).items()) {
            String address = kind + "/" + sheet.path("id").asText();
            int newest = sheet.path("revision").asInt();
            api.get(address).expect(200);
            api.get(address + "/used-by").expect(200);
            api.get(address + "/revisions").expect(200);
            api.get(address + "/compare?was=1").expect(200);
            api.get(address + "/compare?was=1&format=patch").expect(200);
            for (int number = 1; number <= newest; number++) {
                api.get(address + "/revisions/" + number).expect(200);
            }
            if (kind.endsWith("/recipes")) {
                api.get(address + "/resolved").expect(200);
                api.get(address + "/followers").expect(200);
                api.post(address + "/preview", "{'content':" + sheet.path("content") + "}")
                        .expect(200);
            }
            if (kind.endsWith("/rigs")) {
                api.get(address + "/strings").expect(200);
                api.get(address + "/takes").expect(200);
            }
            if (kind.endsWith("/takes")) {
                api.get(address + "/report?revision=1").expect(200);
            }
            api.put(
                            address,
                            newest,
                            "{'content':" + sheet.path("content").toString().replace("'", "\\u0027") + "}")
                    .expect(200);
        }
    }

    private void walkSets() {
        List<JsonNode> sets = api.get("/api/setlists").items();
        for (JsonNode was : sets) {
            for (JsonNode now : sets) {
                String pair = "was=" + was.path("id").asText() + "@1&now="
                        + now.path("id").asText();
                api.get("/api/setlists/compare?" + pair).expect(200);
                api.get("/api/setlists/compare?all=true&" + pair).expect(200);
            }
            api.post(
                            "/api/setlists/" + was.path("id").asText() + "/played",
                            was.path("revision").asInt(),
                            "{}")
                    .expect(200);
        }
    }

    private void walkShares() {
        for (String kind : List.of("rigs", "recipes", "setlists")) {
            for (JsonNode sheet : api.get("/api/" + kind + "?limit=200").items()) {
                String id = sheet.path("id").asText();
                JsonNode share = api.post("/api/shares", "{'kind':'" + kind + "','id':'" + id + "','revision':1}")
                        .expect(201)
                        .json();
                api.get("/s/" + share.path("token").asText()).expect(200);
                api.get("/s/" + share.path("token").asText() + "/data").expect(200);
                api.get("/api/" + kind + "/" + id + "/file").expect(200);
                api.get("/api/shares/qr?url=" + Api.encoded(share.path("url").asText()))
                        .expect(200);
                api.get("/api/shares").expect(200);
                api.delete("/api/shares/" + share.path("id").asText()).expect(204);
            }
        }
    }
}
