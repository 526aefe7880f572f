package rosinbook.web;

import com.fasterxml.jackson.databind.JsonNode;
import rosinbook.testing.Caller;

/** Prints the addresses that a load bench asks of a program that serves a long history. */
public final class LoadedPages {
    private LoadedPages() {}

    /** {@code LoadedPages http://127.0.0.1:PORT}: a shared set, the pieces, and last week's set against tonight's. */
    public static void main(String[] arguments) {
        String base = arguments[0];
        Caller caller = new Caller(base + "/", "");
        JsonNode sets = caller.get("/api/setlists").json().path("items");
        String now = sets.path(0).path("id").asText();
        String was = sets.path(1).path("id").asText();
        int revision = sets.path(1).path("revision").asInt();
        String share = caller.post("/api/shares", "{'kind':'setlists','id':'" + was + "','revision':" + revision + "}")
                .json()
                .path("token")
                .asText();
        System.out.println(base + "/s/" + share);
        System.out.println(base + "/api/pieces");
        System.out.println(base + "/api/setlists/compare?was=" + was + "@" + revision + "&now=" + now);
    }
}
