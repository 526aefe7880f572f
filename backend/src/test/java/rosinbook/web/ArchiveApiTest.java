package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rosinbook.limit.Limit;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.SheetStore;
import rosinbook.store.DatabaseSheetStore;

/** The whole notebook out and in. */
class ArchiveApiTest {
    private final Api api = new Api();
    private final Api other = new Api();

    @AfterEach
    void stop() {
        api.close();
        other.close();
    }

    private static Answer importInto(Api target, byte[] zip) {
        return target.send(target.to("/api/import")
                .header("Content-Type", "application/zip")
                .POST(BodyPublishers.ofByteArray(zip)));
    }

    private static Map<String, String> entries(byte[] zip) throws IOException {
        Map<String, String> entries = new TreeMap<>();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                entries.put(entry.getName(), new String(in.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return entries;
    }

    private static byte[] zip(Map<String, String> entries) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> entry : entries.entrySet()) {
                out.putNextEntry(new ZipEntry(entry.getKey()));
                out.write(entry.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }

    @Test
    void what_goes_out_comes_in_the_same_and_a_second_time_changes_nothing() throws IOException {
        api.post("/api/example", "{}").expect(201);
        Answer out = api.get("/api/export").expect(200);
        assertEquals("application/zip", out.header("Content-Type"));
        assertEquals("attachment; filename=\"rosinbook-2026-11-12.zip\"", out.header("Content-Disposition"));
        long revisions = entries(out.bytes()).keySet().stream()
                .filter(name -> name.startsWith("sheets/"))
                .count();

        assertEquals(
                Api.json("{'added':" + revisions + ",'known':0}"),
                importInto(other, out.bytes()).expect(200).json());
        assertEquals(entries(out.bytes()), entries(other.get("/api/export").bytes()));
        assertEquals(
                Api.json("{'added':0,'known':" + revisions + "}"),
                importInto(other, out.bytes()).expect(200).json());
        assertEquals(entries(out.bytes()), entries(other.get("/api/export").bytes()));
        assertEquals(api.get("/api/tonight").json(), other.get("/api/tonight").json());
        assertEquals(api.get("/api/recipes").json(), other.get("/api/recipes").json());
        assertEquals(
                api.get("/api/search?q=a").json(), other.get("/api/search?q=a").json());
    }

    @Test
    void a_media_type_is_the_same_in_other_letters_and_with_parameters() {
        byte[] archive = api.get("/api/export").bytes();
        for (String type : List.of("Application/ZIP", "application/zip; x=y")) {
            other.send(other.to("/api/import").header("Content-Type", type).POST(BodyPublishers.ofByteArray(archive)))
                    .expect(200);
        }
    }

    @Test
    void a_filled_notebook_takes_what_it_has_not() throws IOException {
        String id = api.create("pieces", "{'title':'One'}").id();
        importInto(other, api.get("/api/export").bytes()).expect(200);
        other.create("pieces", "{'title':'My own'}");
        api.save("pieces", id, 1, "{'title':'Two'}");
        assertEquals(
                Api.json("{'added':1,'known':1}"),
                importInto(other, api.get("/api/export").bytes()).expect(200).json());
        assertEquals("Two", other.get("/api/pieces/" + id).json().path("title").asText());
        assertEquals(2, other.get("/api/pieces").items().size());
    }

    @Test
    void only_one_is_imported_at_once() throws Exception {
        String id = api.create("pieces", "{'title':'One'}").id();
        importInto(other, api.get("/api/export").bytes()).expect(200);
        api.save("pieces", id, 1, "{'title':'Two'}");
        byte[] newer = api.get("/api/export").bytes();
        CompletableFuture<Answer> first = new CompletableFuture<>();
        SheetStore held = DatabaseSheetStore.of(other.database.database(), DatabaseSheetStore.ONLY_NOTEBOOK);
        held.change(pages -> {
            pages.newestForSaving(UUID.fromString(id));
            first.completeAsync(() -> importInto(other, newer));
            Answer second = importInto(other, new byte[1]);
            while (second.status() != 503 && !first.isDone()) {
                second = importInto(other, new byte[1]);
            }
            return second.problem(503, Limit.IMPORTS_AT_ONCE.type());
        });
        assertEquals(
                Api.json("{'added':1,'known':1}"),
                first.get(30, TimeUnit.SECONDS).expect(200).json());
    }

    @Test
    void links_do_not_travel() throws IOException {
        Gear gear = new Gear(api);
        String rig = api.create("rigs", gear.rig(20, 20)).id();
        String token = api.post("/api/shares", "{'kind':'rigs','id':'" + rig + "'}")
                .expect(201)
                .json()
                .path("token")
                .asText();
        importInto(other, api.get("/api/export").bytes()).expect(200);
        other.get("/s/" + token).expect(404);
        assertEquals(0, other.get("/api/shares").items().size());
    }

    @Test
    void the_largest_sheet_that_can_be_saved_comes_through() throws IOException {
        StringBuilder items = new StringBuilder();
        String piece = api.create("pieces", "{'title':'One'}").id();
        for (int i = 0; i < 44; i++) {
            items.append(i == 0 ? "" : ",")
                    .append("'i")
                    .append(i)
                    .append("':{'order':")
                    .append(i)
                    .append(",'piece':'")
                    .append(piece)
                    .append("','note':'")
                    .append("x".repeat(20_000))
                    .append("'}");
        }
        String head = "{'content':{'title':'Long','date':'2026-11-12','notes':'";
        int room = ContentJson.MAX_BYTES - head.length() - items.length() - 100;
        api.post("/api/setlists", head + "y".repeat(Math.min(room, 20_000)) + "','items':{" + items + "}}}")
                .expect(201);
        assertEquals(
                2,
                importInto(other, api.get("/api/export").bytes())
                        .expect(200)
                        .json()
                        .path("added")
                        .asInt());
    }

    @Test
    void what_is_no_archive_is_refused_and_changes_nothing() throws IOException {
        importInto(other, "hello".getBytes(StandardCharsets.UTF_8)).problem(422, "unreadable-archive");
        importInto(other, new byte[0]).problem(422, "unreadable-archive");
        other.send(other.to("/api/import")
                        .header("Content-Type", "application/json")
                        .POST(BodyPublishers.ofString("{}")))
                .problem(415, "wrong-media-type");
        assertTrue(other.get("/api/tonight").json().path("empty").asBoolean());
    }

    private void assertForgeryRefused(String kind, Consumer<ObjectNode> forge) throws IOException {
        Map<String, String> forged = new TreeMap<>();
        for (Map.Entry<String, String> entry :
                entries(api.get("/api/export").bytes()).entrySet()) {
            boolean chosen = entry.getKey().startsWith("sheets/" + kind + "/");
            forged.put(entry.getKey(), chosen ? forged(entry.getValue(), forge) : entry.getValue());
        }
        importInto(other, zip(forged)).problem(422, "unreadable-archive");
        assertTrue(other.get("/api/tonight").json().path("empty").asBoolean());
    }

    private static String forged(String text, Consumer<ObjectNode> forge) {
        ObjectNode revision = (ObjectNode) ContentJson.parse(text.getBytes(StandardCharsets.UTF_8));
        forge.accept(revision);
        JsonNode content = revision.path("content");
        return revision.put("sha256", ContentJson.sha256(ContentJson.canonical(content)))
                .toString();
    }

    @Test
    void forged_archives_that_could_not_have_been_written_here_are_refused() throws IOException {
        Gear gear = new Gear(api);
        String piece = api.create("pieces", "{'title':'Copper Weather'}").id();
        String start = api.create("recipes", gear.start(80)).id();
        String recipe = api.create("recipes", gear.following("Copper, drive", piece, start, 40))
                .id();
        api.create(
                "setlists",
                "{'title':'S','date':'2026-11-12','items':{'a':{'order':1,'piece':'" + piece + "','recipe':{'id':'"
                        + recipe + "','revision':1}}}}");
        assertForgeryRefused("pieces", revision -> revision.put("savedAt", "+1000000000-12-31T23:59:59.999999999Z"));
        assertForgeryRefused("pieces", revision -> revision.put("savedBy", "x".repeat(101)));
        assertForgeryRefused(
                "setlists", revision -> revision.withObject("/content/items/a").put("piece", gear.synth));
        assertForgeryRefused("setlists", revision -> revision.withObject("/content/items/a/recipe")
                .put("revision", 7));
        assertForgeryRefused("setlists", revision -> revision.withObject("/content/items/a/recipe")
                .put("id", UUID.randomUUID().toString()));
        assertForgeryRefused(
                "recipes", follower(content -> content.withObject("/follows").remove("revision")));
        assertForgeryRefused(
                "recipes", follower(content -> content.withObject("/settings").put("voices", 7)));
        assertForgeryRefused(
                "recipes", follower(content -> content.withObject("/follows").put("id", recipe)));
    }

    /** Forges recipes that follow a starting point and leaves the others as they are. */
    private static Consumer<ObjectNode> follower(Consumer<ObjectNode> forge) {
        return revision -> {
            if (revision.path("content").has("follows")) {
                forge.accept(revision.withObject("/content"));
            }
        };
    }
}
