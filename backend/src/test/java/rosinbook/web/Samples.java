package rosinbook.web;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;

/** For every operation of the API a request about things of Ada's notebook, made afresh for each, that works if one may. */
final class Samples {
    /**
     * A request.
     *
     * @param type of the body; empty for none
     * @param ifMatch the revision it builds on; 0 for none
     * @param success what it answers if one may
     */
    record Sample(String method, String path, String type, byte[] body, int ifMatch, int success) {
        private static Sample get(String path) {
            return new Sample("GET", path, "", new byte[0], 0, 200);
        }

        private static Sample delete(String path) {
            return new Sample("DELETE", path, "", new byte[0], 0, 204);
        }

        private static Sample json(String method, String path, String json, int success) {
            byte[] body = Api.quoted(json).getBytes(StandardCharsets.UTF_8);
            return new Sample(method, path, "application/json", body, 0, success);
        }

        private static Sample file(String path, String type, byte[] body, int success) {
            return new Sample("POST", path, type, body, 0, success);
        }

        private static Sample form(String path, String fields, int success) {
            return file(path, "application/x-www-form-urlencoded", fields.getBytes(StandardCharsets.UTF_8), success);
        }

        private Sample over(int revision) {
            return new Sample(method, path, type, body, revision, success);
        }

        Answer sendAs(Band.Caller caller) {
            Band.Caller typed = type.isEmpty() ? caller : caller.with("Content-Type", type);
            return (ifMatch == 0 ? typed : typed.with("If-Match", "\"r" + ifMatch + "\"")).send(method, path, body);
        }
    }

    private final Band band;
    private final Band.Player owner;
    private final Map<String, Function<Band.Player, Sample>> byOperation = new LinkedHashMap<>();

    Samples(Band band) {
        this.band = band;
        this.owner = band.ada;
        owner().post("/api/example", "{}").expect(201);
        sheets();
        benches();
        takes();
        archive();
        shares();
        people();
        door();
    }

    private void add(String operation, Function<Band.Player, Sample> making) {
        byOperation.put(operation, making);
    }

    /** Whether there is one for this operation. */
    boolean has(String operation) {
        return byOperation.containsKey(operation);
    }

    /** One for this operation, such as {@code GET /api/{kind}}; what is temporary or personal in it is this player's. */
    Sample of(String operation, Band.Player player) {
        return byOperation.get(operation).apply(player);
    }

    private Band.Caller owner() {
        return band.as(owner).in(owner.notebook);
    }

    private String create(String kind, String content) {
        return owner().post("/api/" + kind, "{'content':" + content + "}")
                .expect(201)
                .id();
    }

    private String piece() {
        return create("pieces", "{'title':'Reel','styles':['reel']}");
    }

    private String rigContent() {
        String violin = create("instruments", Gear.VIOLIN);
        String synth = create("synths", Gear.SYNTH);
        return "{'title':'On the desk','date':'2026-11-10','instrument':{'id':'" + violin + "'},'synth':{'id':'" + synth
                + "'},'assignments':{'1':{'input':1,'sensitivity':20}}}";
    }

    private String rig() {
        return create("rigs", rigContent());
    }

    private String recipe() {
        return create("recipes", "{'title':'Everyday','settings':{}}");
    }

    private String set() {
        return create(
                "setlists",
                "{'title':'Kitchen','date':'2026-11-19','place':'Kitchen','items':{'a':{'piece':'" + piece()
                        + "','order':1}}}");
    }

    private static byte[] published(String name) {
        try {
            return Files.readAllBytes(Path.of("src/test/resources/published").resolve(name));
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    private static byte[] midi() {
        return published("takes/o1_air.under.mid");
    }

    private String takeContent() {
        String blob = Sample.file("/api/blobs", "audio/midi", midi(), 201)
                .sendAs(owner())
                .expect(201)
                .text();
        return "{'title':'Air','midi':" + blob + ",'date':'2026-11-11'}";
    }

    private String take() {
        return create("takes", takeContent());
    }

    private void sheets() {
        add("GET /api/tonight", player -> Sample.get("/api/tonight"));
        add("GET /api/search", player -> Sample.get("/api/search?q=reel"));
        add("GET /api/styles", player -> Sample.get("/api/styles"));
        add("GET /api/shapes", player -> Sample.get("/api/shapes"));
        add("GET /api/{kind}", player -> Sample.get("/api/pieces"));
        add("POST /api/{kind}", player -> Sample.json("POST", "/api/rigs", "{'content':" + rigContent() + "}", 201));
        add("GET /api/{kind}/{id}", player -> Sample.get("/api/pieces/" + piece()));
        add("PUT /api/{kind}/{id}", player -> Sample.json(
                        "PUT", "/api/pieces/" + piece(), "{'content':{'title':'Other'}}", 200)
                .over(1));
        for (String part : new String[] {"used-by", "compare", "revisions"}) {
            add("GET /api/{kind}/{id}/" + part, player -> Sample.get("/api/pieces/" + piece() + "/" + part));
        }
        add("GET /api/{kind}/{id}/revisions/{number}", player -> Sample.get("/api/pieces/" + piece() + "/revisions/1"));
        add("POST /api/{kind}/{id}/revisions/{number}/restore", player -> Sample.json(
                        "POST", "/api/pieces/" + piece() + "/revisions/1/restore", "{}", 200)
                .over(1));
        add("GET /api/setlists/compare", player -> Sample.get("/api/setlists/compare?was=" + set() + "&now=" + set()));
        add("POST /api/setlists/{id}/played", player -> Sample.json(
                        "POST", "/api/setlists/" + set() + "/played", "{}", 200)
                .over(1));
        add("GET /api/recipes/{id}/resolved", player -> Sample.get("/api/recipes/" + recipe() + "/resolved"));
        add("GET /api/recipes/{id}/followers", player -> Sample.get("/api/recipes/" + recipe() + "/followers"));
        add(
                "POST /api/recipes/{id}/preview",
                player -> Sample.json(
                        "POST",
                        "/api/recipes/" + recipe() + "/preview",
                        "{'content':{'title':'Everyday','settings':{}}}",
                        200));
        add("GET /api/rigs/{id}/strings", player -> Sample.get("/api/rigs/" + rig() + "/strings"));
        add("GET /api/rigs/{id}/takes", player -> Sample.get("/api/rigs/" + rig() + "/takes"));
    }

    private void benches() {
        add(
                "POST /api/bench/divider",
                player -> Sample.json("POST", "/api/bench/divider", "{'supplyVolts':9,'targetVolts':4.5}", 200));
        add(
                "POST /api/bench/probe",
                player -> Sample.json(
                        "POST", "/api/bench/probe", "{'strings':4,'pins':{'3':{'silence':{'dcVolts':9}}}}", 200));
        add("POST /api/bench/adapter", player -> Sample.json("POST", "/api/bench/adapter", wired(), 200));
        add("POST /api/bench/wiring", player -> Sample.json("POST", "/api/bench/wiring", wired(), 200));
        add(
                "POST /api/bench/levels",
                player -> Sample.json(
                        "POST",
                        "/api/bench/levels?rig=" + rig(),
                        "{'readings':[{'string':1,'loudness':'soft','input':1,'decibels':-30},"
                                + "{'string':1,'loudness':'soft','input':2,'decibels':-48}],'noise':[-80,-80,-80,-80]}",
                        200));
        add("POST /api/bench/levels/compare", player -> {
            String levels = Sample.json(
                            "POST",
                            "/api/bench/levels",
                            "{'readings':[{'string':1,'loudness':'soft','input':1,'decibels':-30},"
                                    + "{'string':1,'loudness':'soft','input':2,'decibels':-48}],'noise':[-80,-80]}",
                            200)
                    .sendAs(owner())
                    .expect(200)
                    .json()
                    .path("summary")
                    .toString();
            String side = "'levels':" + levels + "}";
            return Sample.json(
                    "POST",
                    "/api/bench/levels/compare",
                    "{'first':{'name':'was'," + side + ",'second':{'name':'is'," + side + "}",
                    200);
        });
        add(
                "POST /api/bench/levels/{upload}",
                player -> Sample.json(
                        "POST",
                        "/api/bench/levels/" + upload(player) + "?strings=E5,A4,D4,G3&inputs=1,2,3,4",
                        "{}",
                        200));
        add("GET /api/bench/levels/{upload}", player -> Sample.get("/api/bench/levels/" + upload(player)));
        add("DELETE /api/bench/levels/{upload}", player -> Sample.delete("/api/bench/levels/" + upload(player)));
    }

    /** A rig of the example whose plugs are known. */
    private String wired() {
        for (var rig : owner().get("/api/rigs").items()) {
            String body = "{'rig':'" + rig.path("id").asText() + "'}";
            if (owner().post("/api/bench/adapter", body).status() == 200) {
                return body;
            }
        }
        throw new AssertionError("no rig of the example has plugs");
    }

    /** A recording of this player's in Ada's notebook; of Ada's own if the player may not bring one. */
    private String upload(Band.Player player) {
        Sample sample = Sample.file("/api/bench/levels?later=true", "audio/wav", published("levels/reel.wav"), 201);
        Answer brought = sample.sendAs(band.as(player).in(owner.notebook));
        Answer kept = brought.status() == 201 ? brought : sample.sendAs(owner()).expect(201);
        return kept.json().path("upload").asText();
    }

    private void takes() {
        add(
                "POST /api/bench/takes",
                player -> Sample.json("POST", "/api/bench/takes", "{'content':" + takeContent() + "}", 200));
        add("GET /api/bench/takes/thresholds", player -> Sample.get("/api/bench/takes/thresholds"));
        add("GET /api/exercise", player -> Sample.get("/api/exercise"));
        add("POST /api/blobs", player -> Sample.file("/api/blobs", "audio/midi", midi(), 201));
        for (String part :
                new String[] {"report", "original.mid", "clean.mid", "clean.musicxml", "notes.csv", "faults.csv"}) {
            add("GET /api/takes/{id}/" + part, player -> Sample.get("/api/takes/" + take() + "/" + part));
        }
    }

    private void archive() {
        // The example stands in it already; only who may write is told that.
        add("POST /api/example", player -> Sample.json("POST", "/api/example", "{}", 409));
        add("GET /api/export", player -> Sample.get("/api/export"));
        add(
                "POST /api/import",
                player -> Sample.file(
                        "/api/import",
                        "application/zip",
                        owner().get("/api/export").expect(200).bytes(),
                        200));
        add("GET /api/openapi.json", player -> Sample.get("/api/openapi.json"));
    }

    private String share(String field) {
        return owner().post("/api/shares", "{'kind':'recipes','id':'" + recipe() + "'}")
                .expect(201)
                .json()
                .path(field)
                .asText();
    }

    private void shares() {
        add("GET /api/shares", player -> Sample.get("/api/shares"));
        add(
                "POST /api/shares",
                player -> Sample.json(
                        "POST", "/api/shares", "{'kind':'recipes','id':'" + recipe() + "','revision':1}", 201));
        add("GET /api/shares/qr", player -> Sample.get("/api/shares/qr?url=" + Api.encoded(share("url"))));
        add("DELETE /api/shares/{id}", player -> Sample.delete("/api/shares/" + share("id")));
        add("GET /api/{kind}/{id}/file", player -> Sample.get("/api/recipes/" + recipe() + "/file"));
        add("GET /s/{token}", player -> Sample.get("/s/" + share("token")));
        add("GET /s/{token}/data", player -> Sample.get("/s/" + share("token") + "/data"));
    }

    private String guest(String field) {
        return band.as(band.mira)
                .post("/api/players", "{'name':'Guest " + UUID.randomUUID() + "'}")
                .expect(201)
                .json()
                .path(field)
                .asText();
    }

    private void people() {
        add("GET /api/me", player -> Sample.get("/api/me"));
        add(
                "PUT /api/me/passphrase",
                player -> Sample.json(
                        "PUT",
                        "/api/me/passphrase",
                        "{'current':'" + player.passphrase + "','next':'" + player.passphrase + "'}",
                        204));
        add("GET /api/me/sessions", player -> Sample.get("/api/me/sessions"));
        add("DELETE /api/me/sessions", player -> Sample.delete("/api/me/sessions"));
        add("DELETE /api/me/sessions/{session}", player -> {
            String used = player.session;
            band.signIn(player);
            String id = band.as(player).get("/api/me/sessions").items().stream()
                    .filter(session -> session.path("current").asBoolean())
                    .findFirst()
                    .orElseThrow()
                    .path("id")
                    .asText();
            player.session = used;
            return Sample.delete("/api/me/sessions/" + id);
        });
        add("GET /api/players", player -> Sample.get("/api/players"));
        add(
                "POST /api/players",
                player -> Sample.json("POST", "/api/players", "{'name':'New " + UUID.randomUUID() + "'}", 201));
        add("DELETE /api/players/{player}", player -> Sample.delete("/api/players/" + guest("id")));
        add(
                "POST /api/players/{player}/invitation",
                player -> Sample.json("POST", "/api/players/" + guest("id") + "/invitation", "{}", 201));
        add("POST /api/notebooks", player -> Sample.json("POST", "/api/notebooks", "{'title':'Second'}", 201));
        String notebook = "/api/notebooks/" + owner.notebook;
        add("PUT /api/notebooks/{notebook}", player -> Sample.json("PUT", notebook, "{'title':'Ours'}", 200));
        add("POST /api/notebooks/{notebook}/open", player -> Sample.json("POST", notebook + "/open", "{}", 204));
        add("GET /api/notebooks/{notebook}/members", player -> Sample.get(notebook + "/members"));
        add(
                "PUT /api/notebooks/{notebook}/members/{player}",
                player -> Sample.json("PUT", notebook + "/members/" + guest("id"), "{'may':'read'}", 204));
        add("DELETE /api/notebooks/{notebook}/members/{player}", player -> {
            String guest = guest("id");
            owner().put(notebook + "/members/" + guest, "{'may':'write'}").expect(204);
            return Sample.delete(notebook + "/members/" + guest);
        });
        add("GET /api/metrics", player -> Sample.get("/api/metrics"));
        add("GET /api/backups", player -> Sample.get("/api/backups"));
        add("POST /api/backups", player -> Sample.json("POST", "/api/backups", "{}", 201));
    }

    private void door() {
        add("GET /healthz", player -> Sample.get("/healthz"));
        add("GET /sign-in", player -> Sample.get("/sign-in"));
        add(
                "POST /sign-in",
                player -> Sample.form(
                        "/sign-in", "name=" + owner.name + "&passphrase=" + owner.passphrase.replace(' ', '+'), 303));
        add("POST /sign-out", player -> Sample.form("/sign-out", "", 303));
        add("GET /join/{token}", player -> Sample.get("/join/" + joining()));
        add(
                "POST /join/{token}",
                player -> Sample.form("/join/" + joining(), "passphrase=a+bow+and+four+strings", 303));
    }

    private String joining() {
        return guest("invitation").replaceAll(".*/join/", "");
    }
}
