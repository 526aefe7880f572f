package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/**
 * Who gets through where: every operation of the API, tried by everybody. What an operation needs is read from
 * {@code x-right} in openapi.json; {@link Expected} says what that means for whom.
 */
class RightsTest {
    /** Who asks for something in Ada's notebook. */
    private enum Who {
        STRANGER,
        SHARE_HOLDER,
        PLAYER_OF_ANOTHER_NOTEBOOK,
        KEEPER,
        READER,
        WRITER,
        OWNER
    }

    /** How somebody is answered: let through, or refused with this status and problem. */
    private record Expected(int status, String problem) {
        private static final Expected THROUGH = new Expected(0, "");
        private static final Expected SIGN_IN = new Expected(401, "sign-in-needed");
        private static final Expected NO_NOTEBOOK = new Expected(404, "no-such-notebook");
        private static final Expected ONLY_READ = new Expected(403, "may-only-read");
        private static final Expected NOT_OWNER = new Expected(403, "owner-only");
        private static final Expected NOT_KEEPER = new Expected(403, "keeper-only");

        /** The whole matrix. A keeper is a stranger in a notebook that was not opened to them. */
        private static Expected of(String right, Who who) {
            boolean isSignedIn = who.compareTo(Who.SHARE_HOLDER) > 0;
            boolean isIn = who.compareTo(Who.READER) >= 0;
            return switch (right) {
                case "none", "share" -> THROUGH;
                case "signed-in" -> isSignedIn ? THROUGH : SIGN_IN;
                case "keep" -> !isSignedIn ? SIGN_IN : who == Who.KEEPER ? THROUGH : NOT_KEEPER;
                case "read" -> !isSignedIn ? SIGN_IN : isIn ? THROUGH : NO_NOTEBOOK;
                case "write" -> !isSignedIn ? SIGN_IN : !isIn ? NO_NOTEBOOK : who == Who.READER ? ONLY_READ : THROUGH;
                case "own" -> !isSignedIn ? SIGN_IN : !isIn ? NO_NOTEBOOK : who == Who.OWNER ? THROUGH : NOT_OWNER;
                default -> throw new AssertionError("x-right knows no " + right);
            };
        }
    }

    private static final Set<String> ENDS_THE_SESSION = Set.of("POST /sign-out", "POST /sign-in", "POST /join/{token}");

    private final Band band;

    RightsTest() throws IOException {
        band = new Band();
    }

    @AfterEach
    void close() throws IOException {
        band.close();
    }

    private static String right(String operation) {
        String[] parts = operation.split(" ", 2);
        return Description.operation(parts[0], parts[1]).path("x-right").asText("(missing)");
    }

    @Test
    void the_description_tells_for_every_operation_what_the_server_asks_for() {
        Map<String, String> described = new LinkedHashMap<>();
        Map<String, String> asked = new LinkedHashMap<>();
        for (String operation : Description.operations()) {
            String[] parts = operation.split(" ", 2);
            Rights.Need need = Rights.of(parts[0], parts[1]);
            described.put(operation, right(operation));
            asked.put(operation, need.word());
            boolean isForStrangers = need == Rights.Need.EVERYBODY || need == Rights.Need.SHARE;
            assertEquals(isForStrangers, Rights.isOpenToAll(parts[1]), operation);
        }
        assertEquals(described, asked);
    }

    @Test
    void everybody_gets_through_everywhere_where_they_may_and_nowhere_else() {
        Samples samples = new Samples(band);
        Set<String> uncovered = new TreeSet<>(Description.operations());
        uncovered.removeIf(samples::has);
        assertEquals(Set.of(), uncovered, "every operation is tried; say in Samples how");
        List<String> wrong = new ArrayList<>();
        Map<Who, Integer> through = new EnumMap<>(Who.class);
        for (String operation : Description.operations()) {
            for (Who who : Who.values()) {
                Band.Player player = player(who);
                Samples.Sample sample = samples.of(operation, player);
                Answer answer = sample.sendAs(caller(who, player));
                Expected expected = Expected.of(right(operation), who);
                if (expected.equals(Expected.THROUGH)) {
                    through.merge(who, 1, Integer::sum);
                }
                if (!isAsExpected(expected, sample, answer)) {
                    wrong.add(operation + " by " + who + ": " + answer.status() + " " + answer.text());
                }
                if (ENDS_THE_SESSION.contains(operation)) {
                    band.signIn(player);
                }
            }
        }
        assertEquals(List.of(), wrong);
        assertTrue(through.get(Who.STRANGER) >= 5 && through.get(Who.OWNER) > through.get(Who.WRITER), "" + through);
        assertTrue(through.get(Who.WRITER) > through.get(Who.READER), "" + through);
        assertEquals(through.get(Who.STRANGER), through.get(Who.SHARE_HOLDER));
    }

    private static boolean isAsExpected(Expected expected, Samples.Sample sample, Answer answer) {
        if (expected.equals(Expected.THROUGH)) {
            return answer.status() == sample.success();
        }
        return answer.status() == expected.status()
                && answer.json().path("type").asText().equals("/problems/" + expected.problem());
    }

    private Band.Player player(Who who) {
        return switch (who) {
            case STRANGER, SHARE_HOLDER, OWNER -> band.ada;
            case PLAYER_OF_ANOTHER_NOTEBOOK -> band.oskar;
            case KEEPER -> band.mira;
            case READER -> band.lena;
            case WRITER -> band.jonas;
        };
    }

    /** A share holder tries what they have, the token, as a session. */
    private Band.Caller caller(Who who, Band.Player player) {
        Band.Caller caller =
                switch (who) {
                    case STRANGER -> band.stranger();
                    case SHARE_HOLDER -> band.new Caller(shareToken());
                    default -> band.as(player);
                };
        return caller.in(band.ada.notebook);
    }

    private String shareToken() {
        Band.Caller ada = band.as(band.ada).in(band.ada.notebook);
        String recipe = ada.post("/api/recipes", "{'content':{'title':'Shared','settings':{}}}")
                .expect(201)
                .id();
        String token = ada.post("/api/shares", "{'kind':'recipes','id':'" + recipe + "'}")
                .expect(201)
                .json()
                .path("token")
                .asText();
        band.stranger().get("/s/" + token).expect(200);
        return token;
    }

    @Test
    void a_notebook_one_may_not_read_answers_like_none_at_all() {
        Samples samples = new Samples(band);
        for (String operation : Description.operations()) {
            if (!Set.of("read", "write", "own").contains(right(operation))) {
                continue;
            }
            Samples.Sample sample = samples.of(operation, band.ada);
            Band.Caller oskar = band.as(band.oskar);
            Answer hers = sample.sendAs(oskar.in(band.ada.notebook));
            String nowhere = UUID.randomUUID().toString();
            Samples.Sample elsewhere = new Samples.Sample(
                    sample.method(),
                    sample.path().replace(band.ada.notebook, nowhere),
                    sample.type(),
                    sample.body(),
                    sample.ifMatch(),
                    sample.success());
            Answer none = elsewhere.sendAs(oskar.in(nowhere));
            assertEquals(404, hers.status(), operation);
            Likeness.assertAlike(hers, none, operation);
            Answer noId = sample.sendAs(oskar.with("Rosinbook-Notebook", "no id"));
            if (!sample.path().contains(band.ada.notebook)) {
                Likeness.assertAlike(noId, none, operation);
            }
        }
    }
}
