package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpRequest.BodyPublishers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** Calls everything the benches answer, over a notebook with rigs in it; {@link Api} holds each answer against the description. */
final class BenchWalk {
    private final Api api;

    BenchWalk(Api api) {
        this.api = api;
    }

    void walk() throws IOException {
        walkWiring();
        walkTakes();
        walkLevels();
    }

    private void walkWiring() {
        api.post("/api/bench/divider", "{'supplyVolts':9,'targetVolts':4.5,'loadOhms':100000}")
                .expect(200);
        api.post("/api/bench/divider", "{'supplyVolts':7,'targetVolts':9}").problem(422, "impossible-divider");
        String pins = "{'1':{'toGround':{'read':'ohms','ohms':0.2}},'2':{'silence':{'acMillivolts':0.3,'dcVolts':0},"
                + "'bowed':{'1':{'acMillivolts':40},'2':{'acMillivolts':2}}},'3':{'silence':{'dcVolts':9}}}";
        api.post("/api/bench/probe", "{'strings':4,'pins':" + pins + "}").expect(200);
        for (JsonNode listed : api.get("/api/rigs").items()) {
            String rig = "{'rig':'" + listed.path("id").asText() + "'}";
            JsonNode sheet = api.post("/api/bench/wiring", rig).expect(200).json();
            String again = sheet.path("file").toString().replace("'", "\\u0027");
            api.post("/api/bench/wiring", again).expect(200);
            api.post("/api/bench/adapter", rig).expect(200);
        }
    }

    private static byte[] published(String name) throws IOException {
        return Files.readAllBytes(Path.of("src/test/resources/published").resolve(name));
    }

    private Answer sendFile(String address, String type, byte[] file) {
        return api.send(api.to(address).header("Content-Type", type).POST(BodyPublishers.ofByteArray(file)));
    }

    private void walkTakes() throws IOException {
        byte[] midi = published("takes/o1_air.over.mid");
        api.get("/api/bench/takes/thresholds").expect(200);
        api.get("/api/exercise?strings=A4,D4,G3,C3&tempo=72").expect(200);
        sendFile("/api/bench/takes?strings=E5,A4,D4,G3&exercise=60", "audio/midi", midi)
                .expect(200);
        sendFile("/api/bench/takes?baseChannel=16&strings=E5,A4,D4,G3", "audio/midi", midi)
                .problem(422, "unfit-take");
        sendFile("/api/blobs", "audio/midi", Arrays.copyOf(midi, 40)).problem(422, "unreadable-midi");
        String blob = sendFile("/api/blobs", "audio/midi", midi).expect(201).text();
        String rig = api.get("/api/rigs").items().get(0).path("id").asText();
        String content = "{'title':'Air','midi':" + blob + ",'rig':{'id':'" + rig + "'},'date':'2026-11-11',"
                + "'strings':{'1':'E5','2':'A4','3':'D4','4':'G3'},'layout':{'by':'channel','highestFirst':true},"
                + "'exercise':{'tempoBpm':60},'thresholds':{'TOUCHING':0.05},'refused':{'ghost-17':'meant'}}";
        api.post("/api/bench/takes", "{'content':" + content + "}").expect(200);
        String take = "/api/takes/" + api.create("takes", content).id();
        for (String part :
                List.of("report", "original.mid", "clean.mid", "clean.musicxml", "notes.csv", "faults.csv")) {
            api.get(take + "/" + part).expect(200);
        }
        api.get("/api/rigs/" + rig + "/takes").expect(200);
    }

    private void walkLevels() throws IOException {
        String bench = "/api/bench/levels";
        String asked = "?rig=" + api.get("/api/rigs").items().get(0).path("id").asText();
        byte[] wav = published("levels/reel.wav");
        api.post(
                        bench,
                        "{'readings':[{'string':1,'loudness':'soft','input':1,'decibels':-30},"
                                + "{'string':1,'loudness':'soft','input':2,'decibels':-48}],'noise':[-80,-80]}")
                .expect(200);
        sendFile(bench + "?strings=E5,A4,D4,G3", "audio/midi", published("takes/o1_air.reasonable.mid"))
                .expect(200);
        sendFile(bench, "audio/wav", Arrays.copyOf(wav, 60_000)).problem(422, "unreadable-recording");
        String upload = bench + "/"
                + sendFile(bench + "?later=true", "audio/wav", wav)
                        .expect(201)
                        .json()
                        .path("upload")
                        .asText();
        JsonNode report = api.post(
                        upload + asked + "&inputs=1,2,3,4&strings=E5,A4,D4,G3&steps=10:-44,20:-38,30:-32", "{}")
                .expect(200)
                .json();
        api.get(upload).expect(200);
        api.delete(upload).expect(204);
        api.get(upload).problem(404, "no-such-upload");
        sendFile(bench, "audio/wav", wav).expect(200);
        String levels = report.path("summary").toString();
        api.post(
                        bench + "/compare",
                        "{'first':{'name':'was','levels':" + levels + "},'second':{'name':'is','levels':" + levels
                                + "}}")
                .expect(200);
        String measured = new Gear(api).rig(20, 18).replaceFirst("\\{", "{'levels':" + levels + ",");
        api.create("rigs", measured);
    }
}
