package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rosinbook.compare.Pointer;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;

/** Reads requests. Whatever is not as it should be becomes a {@link Problem}. */
final class Requests {
    private static final Pattern ETAG = Pattern.compile("\"r([1-9]\\d{0,8})\"");

    private static final String NOT_JSON = "This is not JSON that can be read";

    private Requests() {}

    static Kind kind(Context exchange) {
        return Kind.ofPath(exchange.pathParam("kind"))
                .orElseThrow(() -> new Problem(
                        404,
                        "no-such-kind",
                        "There is no such kind of sheet",
                        "Known are instruments, synths, rigs, pieces, recipes, setlists, log and takes."));
    }

    static UUID id(Context exchange) {
        return uuid(exchange.pathParam("id"));
    }

    /** A UUID in a text from outside; empty if it is none. */
    static Optional<UUID> uuidIn(String text) {
        try {
            return Optional.of(UUID.fromString(text));
        } catch (IllegalArgumentException notAnId) {
            return Optional.empty();
        }
    }

    private static UUID uuid(String text) {
        return uuidIn(text)
                .orElseThrow(() -> new Problem(
                        404, "no-such-sheet", "There is no such thing here", "This is not an id of a sheet."));
    }

    static int number(Context exchange) {
        return number("revision", exchange.pathParam("number"));
    }

    private static int number(String name, String text) {
        if (text == null || !text.matches("[1-9]\\d{0,8}")) {
            throw new IllegalArgumentException(name + " is not a whole number from 1 on");
        }
        return Integer.parseInt(text);
    }

    static int queryNumber(Context exchange, String name, int absent) {
        String text = exchange.queryParam(name);
        return text == null ? absent : number(name, text);
    }

    /** A finite number in a text from outside, of which {@code name} tells what it is. */
    static double decimal(String name, String text) {
        try {
            double number = Double.parseDouble(text.strip());
            if (Double.isFinite(number)) {
                return number;
            }
        } catch (NumberFormatException noNumber) {
            // Answered below, as infinity is.
        }
        throw new IllegalArgumentException(name + " holds something that is no number; write it like 3 or -41.5");
    }

    /** How many entries of a list are asked for. */
    static int limit(Context exchange) {
        int limit = queryNumber(exchange, "limit", 50);
        if (limit > Pages.MOST_LISTED) {
            throw new IllegalArgumentException("limit is " + limit + "; give 1 to " + Pages.MOST_LISTED);
        }
        return limit;
    }

    /** A day of the years 1 to 9999. */
    static Optional<LocalDate> day(Context exchange, String name) {
        String text = exchange.queryParam(name);
        if (text == null) {
            return Optional.empty();
        }
        try {
            LocalDate day = LocalDate.parse(text);
            if (day.getYear() >= 1 && day.getYear() <= 9999) {
                return Optional.of(day);
            }
        } catch (DateTimeParseException notADay) {
            // Told below, like a day that is too far away.
        }
        throw new IllegalArgumentException(name + " is no day of the years 1 to 9999; give one such as 2026-11-26");
    }

    static boolean flag(Context exchange, String name) {
        return "true".equals(exchange.queryParam(name));
    }

    static Optional<String> text(Context exchange, String name) {
        Optional<String> given = Optional.ofNullable(exchange.queryParam(name)).filter(text -> !text.isBlank());
        Limit.QUERY_TEXT.check(given.map(String::length).orElse(0));
        if (given.isPresent() && given.get().indexOf('\0') >= 0) {
            throw new IllegalArgumentException(name + " holds a NUL; leave it out");
        }
        return given;
    }

    /** {@code id} or {@code id@revision} in a query parameter. */
    static Reference reference(Context exchange, String name) {
        String text = exchange.queryParam(name);
        if (text == null || text.isBlank()) {
            throw new IllegalArgumentException(name + " is missing; give an id, or id@revision");
        }
        String[] parts = text.split("@", 2);
        Integer revision = parts.length == 2 ? number(name, parts[1]) : null;
        return new Reference(uuid(parts[0]), revision);
    }

    /** {@code id} or {@code id@revision} in a member of the body. */
    static Reference reference(String pointer, String text) {
        String[] parts = text.split("@", 2);
        if (parts.length == 2 && !parts[1].matches("[1-9]\\d{0,8}")) {
            throw new InvalidContent(pointer, "what stands behind @ is no revision; give a whole number from 1 on");
        }
        return new Reference(uuid(parts[0]), parts.length == 2 ? Integer.valueOf(parts[1]) : null);
    }

    /** What is in the body, such as {@code application/json}; empty if it is not said. */
    static String mediaType(Context exchange) {
        String type = exchange.contentType();
        return type == null ? "" : type.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
    }

    /** @param remedy what to send instead, as a sentence */
    static Problem wrongMediaType(String remedy) {
        return new Problem(415, "wrong-media-type", "This is not of a kind that is read here", remedy);
    }

    /** The JSON object in the body, with none but these members. */
    static ObjectNode body(Context exchange, String... members) {
        if (!mediaType(exchange).equals("application/json")) {
            throw wrongMediaType("Send JSON, with Content-Type: application/json.");
        }
        if (!(parsed(Body.whole(exchange, Limit.JSON_BYTES)) instanceof ObjectNode object)) {
            throw new Problem(400, "not-json", NOT_JSON, "Send a JSON object.");
        }
        Set<String> known = Set.of(members);
        object.fieldNames().forEachRemaining(name -> {
            if (!known.contains(name)) {
                throw new InvalidContent(
                        Pointer.ROOT.plus(name).toString(),
                        members.length == 0
                                ? "nothing is needed here; send {}"
                                : "there is no such field; known are " + String.join(", ", members));
            }
        });
        return object;
    }

    /** Places within the content are told from the content on, as everywhere. */
    private static JsonNode parsed(byte[] bytes) {
        try {
            return ContentJson.parse(bytes);
        } catch (InvalidContent problem) {
            if (problem.limit().isPresent()) {
                throw problem;
            }
            if (problem.pointer().isEmpty()) {
                throw new Problem(400, "not-json", NOT_JSON, problem.getMessage());
            }
            throw new InvalidContent(problem.pointer().replaceFirst("^/content/", "/"), problem.getMessage());
        }
    }

    /** The revision that {@code If-Match} names. */
    static int ifMatch(Context exchange) {
        String header = exchange.header("If-Match");
        if (header == null) {
            throw new Problem(
                    428,
                    "revision-needed",
                    "Say which revision this builds on",
                    "Send If-Match with the ETag you got when reading, such as \"r7\"; then nobody's work is lost.");
        }
        Matcher matcher = ETAG.matcher(header.strip());
        if (!matcher.matches()) {
            throw new IllegalArgumentException("If-Match is no ETag of ours; it looks like \"r7\", with the quotes");
        }
        return Integer.parseInt(matcher.group(1));
    }

    /** Who saves, and why; a player who signed in is who they are, whatever the body says. */
    static Notebook.Note note(Context exchange, ObjectNode body) {
        return Visit.of(exchange).signed(new Notebook.Note(limited(body, "by", 100), limited(body, "reason", 1000)));
    }

    /** A text member of at most so many characters; empty if it is absent. */
    static String limited(ObjectNode body, String name, int most) {
        String text = string(body, name);
        if (text.length() > most) {
            throw InvalidContent.tooMuch(
                    "/" + name,
                    new PastLimit(
                            Limit.TEXT_LENGTH,
                            name + " has " + text.length() + " characters; " + most + " is the most"));
        }
        return text;
    }

    /** A text member; empty if it is absent. */
    static String string(ObjectNode body, String name) {
        JsonNode node = body.path(name);
        if (node.isMissingNode() || node.isNull()) {
            return "";
        }
        if (!node.isTextual()) {
            throw new InvalidContent("/" + name, name + " must be a text");
        }
        return node.textValue();
    }

    static Optional<UUID> optionalId(ObjectNode body, String name) {
        String text = string(body, name);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(uuidIn(text).orElseThrow(() -> new InvalidContent("/" + name, name + " must be a UUID")));
    }

    /** A list member; empty if it is absent. */
    static ArrayNode list(ObjectNode body, String name) {
        JsonNode given = optional(body, name).orElseGet(body::arrayNode);
        if (given instanceof ArrayNode list) {
            return list;
        }
        throw new InvalidContent("/" + name, name + " must be a list");
    }

    static Optional<JsonNode> optional(ObjectNode body, String name) {
        return body.hasNonNull(name) ? Optional.of(body.get(name)) : Optional.empty();
    }
}
