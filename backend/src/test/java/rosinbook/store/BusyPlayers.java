package rosinbook.store;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import rosinbook.notebook.ContentJson;

/**
 * Several clients that write sheets of every kind through HTTP until nobody answers any more, and a ledger of what they
 * were answered.
 */
final class BusyPlayers {
    /** An answered revision. */
    record Key(String kind, UUID id, int revision) {}

    /** Hash of every answered revision. */
    final Map<Key, String> answered = new ConcurrentHashMap<>();

    /** Names of backups that were answered. */
    final Set<String> backups = ConcurrentHashMap.newKeySet();

    private final HttpClient client =
            HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
    private final Random random = new Random(17);

    /** Something a client does until it is broken off. */
    private interface Job {
        void run() throws IOException, InterruptedException;
    }

    /** The service said no; nothing of that is counted on. */
    static final class Refused extends IOException {
        private static final long serialVersionUID = 1;
        final int status;
        final String body;

        Refused(int status, String body) {
            super(status + " " + body);
            this.status = status;
            this.body = body;
        }
    }

    /** Starts all of them; each ends when it is refused or nobody answers. */
    List<Thread> start(String address) {
        List<Thread> threads = new ArrayList<>();
        for (Job job : List.<Job>of(
                () -> rigs(address),
                () -> recipes(address),
                () -> setlists(address),
                () -> takes(address),
                () -> backUp(address))) {
            Thread thread = new Thread(() -> untilBrokenOff(job));
            thread.start();
            threads.add(thread);
        }
        return threads;
    }

    private static void untilBrokenOff(Job job) {
        try {
            job.run();
        } catch (IOException killed) {
            // as it should be
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** A rig and a line in the log saved together. */
    private void rigs(String address) throws IOException, InterruptedException {
        UUID violin = create(
                address,
                "instruments",
                "{'title':'Green violin','strings':{'1':{'note':'E5'},'2':{'note':'A4'},'3':{'note':'D4'},'4':{'note':'G3'}}}");
        UUID synth = create(
                address,
                "synths",
                "{'title':'Stage synth','inputs':6,'sensitivityScale':{'min':0,'max':100,'step':1}}");
        String rig = "{'title':'Rig %d','date':'2026-11-10','instrument':{'id':'" + violin + "'},'synth':{'id':'"
                + synth + "'},'assignments':{'1':{'input':1,'sensitivity':%d},'2':{'input':2,'sensitivity':30}}}";
        UUID id = create(address, "rigs", rig.formatted(0, 0));
        for (int revision = 1; ; revision++) {
            save(
                    address,
                    "rigs",
                    id,
                    revision,
                    rig.formatted(revision, revision % 100),
                    ",'log':{'date':'2026-11-12','felt':'good','text':'save " + revision + "'}");
        }
    }

    /** A starting point and a recipe that follows its newest revision. */
    private void recipes(String address) throws IOException, InterruptedException {
        UUID start = create(address, "recipes", start(0));
        String follower = "{'title':'Reel','follows':{'id':'" + start
                + "'},'settings':{'voices':{'warm':{'parameters':{'level':%d}}}}}";
        UUID id = create(address, "recipes", follower.formatted(0));
        for (int revision = 1; ; revision++) {
            save(address, "recipes", start, revision, start(revision % 100), "");
            save(address, "recipes", id, revision, follower.formatted(revision % 100), "");
        }
    }

    private static String start(int level) {
        return "{'title':'Everyday','settings':{'voices':{'warm':{'name':'Warm','order':1,'on':true,'parameters':{'level':"
                + level + "}}}}}";
    }

    /** Pieces with styles, and a set that plays more and more of them. */
    private void setlists(String address) throws IOException, InterruptedException {
        String set = "{'title':'Thursday','date':'2026-11-12','items':{%s}}";
        UUID id = create(address, "setlists", set.formatted(""));
        List<String> items = new ArrayList<>();
        for (int revision = 1; ; revision++) {
            UUID piece = create(
                    address, "pieces", "{'title':'Piece " + revision + "','styles':['reel','in " + revision + "']}");
            save(address, "pieces", piece, 1, "{'title':'Piece','styles':['jig']}", "");
            items.add("'" + revision + "':{'order':" + revision + ",'piece':'" + piece + "'}");
            List<String> shown = items.subList(Math.max(0, items.size() - 8), items.size());
            save(address, "setlists", id, revision, set.formatted(String.join(",", shown)), "");
        }
    }

    private void takes(String address) throws IOException, InterruptedException {
        for (int number = 0; ; number++) {
            JsonNode blob = keep(address, midi(random, 150_000));
            create(address, "takes", "{'title':'Take " + number + "','midi':" + blob + "}");
        }
    }

    private void backUp(String address) throws IOException, InterruptedException {
        while (true) {
            backups.add(backup(address));
            Thread.sleep(100);
        }
    }

    /** Makes a backup and returns its name. */
    String backup(String address) throws IOException, InterruptedException {
        return send(address, "POST", "backups", json("{}"), null).path("name").asText();
    }

    JsonNode keep(String address, byte[] midi) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create(address + "api/blobs"))
                .header("Content-Type", "audio/midi")
                .timeout(Duration.ofSeconds(30))
                .POST(BodyPublishers.ofByteArray(midi))
                .build();
        return answer(client.send(request, BodyHandlers.ofByteArray()));
    }

    /** A Standard MIDI File of one note and a text of so many random bytes. */
    static byte[] midi(Random random, int length) {
        byte[] text = new byte[length];
        random.nextBytes(text);
        ByteArrayOutputStream track = new ByteArrayOutputStream();
        track.writeBytes(new byte[] {0, (byte) 0xFF, 0x01});
        for (int shift = 21; shift >= 0; shift -= 7) {
            int more = shift == 0 ? 0 : 0x80;
            track.write((length >> shift) & 0x7F | more);
        }
        track.writeBytes(text);
        track.writeBytes(new byte[] {0, (byte) 0x90, 69, 80, 96, (byte) 0x80, 69, 0, 0, (byte) 0xFF, 0x2F, 0});
        return ByteBuffer.allocate(22 + track.size())
                .put("MThd".getBytes(StandardCharsets.US_ASCII))
                .putInt(6)
                .putShort((short) 0)
                .putShort((short) 1)
                .putShort((short) 480)
                .put("MTrk".getBytes(StandardCharsets.US_ASCII))
                .putInt(track.size())
                .put(track.toByteArray())
                .array();
    }

    UUID create(String address, String kind, String content) throws IOException, InterruptedException {
        UUID id = UUID.randomUUID();
        note(kind, send(address, "POST", kind, json("{'id':'" + id + "','content':" + content + "}"), null));
        return id;
    }

    void save(String address, String kind, UUID id, int basedOn, String content, String more)
            throws IOException, InterruptedException {
        note(
                kind,
                send(
                        address,
                        "PUT",
                        kind + "/" + id,
                        json("{'content':" + content + more + "}"),
                        "\"r" + basedOn + "\""));
    }

    private void note(String kind, JsonNode saved) {
        answered.put(
                new Key(
                        kind,
                        UUID.fromString(saved.path("id").asText()),
                        saved.path("revision").asInt()),
                saved.path("sha256").asText());
    }

    private static String json(String text) {
        return text.replace('\'', '"');
    }

    private JsonNode send(String address, String method, String path, String body, String ifMatch)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address + "api/" + path))
                .header("Content-Type", "application/json")
                .timeout(Duration.ofSeconds(30))
                .method(method, BodyPublishers.ofString(body));
        if (ifMatch != null) {
            request.header("If-Match", ifMatch);
        }
        return answer(client.send(request.build(), BodyHandlers.ofByteArray()));
    }

    private static JsonNode answer(HttpResponse<byte[]> response) throws IOException {
        if (response.statusCode() >= 300) {
            throw new Refused(response.statusCode(), new String(response.body(), StandardCharsets.UTF_8));
        }
        return ContentJson.parse(response.body());
    }

    /** Sends a request of one's own. */
    HttpResponse<byte[]> exchange(HttpRequest.Builder request) throws IOException, InterruptedException {
        return client.send(request.timeout(Duration.ofSeconds(120)).build(), BodyHandlers.ofByteArray());
    }

    /** Hash of a revision as the service tells it; empty if it has none. */
    String read(String address, Key key) throws IOException, InterruptedException {
        HttpResponse<byte[]> found = exchange(HttpRequest.newBuilder(
                URI.create(address + "api/" + key.kind + "/" + key.id + "/revisions/" + key.revision)));
        return found.statusCode() == 200
                ? ContentJson.parse(found.body()).path("sha256").asText()
                : "";
    }

    /** Answered revisions that a closed notebook has not, or has with another hash. */
    List<Key> lost(Path folder) {
        try (Database database = Database.inFolder(folder)) {
            DatabaseSheetStore store = DatabaseSheetStore.onlyNotebook(database, java.time.Instant.now());
            return answered.entrySet().stream()
                    .filter(each -> store.look(pages -> pages.revision(each.getKey().id, each.getKey().revision))
                            .filter(found -> found.sha256().equals(each.getValue()))
                            .isEmpty())
                    .map(Map.Entry::getKey)
                    .toList();
        }
    }
}
