package rosinbook.store;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;

/** Checks revisions as they come, sheet by sheet in the order of their numbers. */
final class Verification {
    private final List<String> damages = new ArrayList<>();
    private int revisions;
    private UUID sheet;
    private String place = "";
    private int head;
    private int last;

    void check(UUID sheetId, String kind, int headNumber, int number, String content, String sha256) {
        if (!sheetId.equals(sheet)) {
            closeSheet();
            sheet = sheetId;
            place = kind + " " + sheetId;
            head = headNumber;
            last = 0;
        }
        if (number != last + 1) {
            damages.add(place + ": revision " + (last + 1) + " is missing");
        }
        last = number;
        revisions++;
        checkContent(number, content, sha256);
    }

    private void checkContent(int number, String content, String sha256) {
        try {
            JsonNode json = ContentJson.parse(content.getBytes(StandardCharsets.UTF_8));
            if (!ContentJson.sha256(content).equals(sha256)
                    || !ContentJson.sha256(ContentJson.canonical(json)).equals(sha256)) {
                damages.add(place + ": revision " + number + " does not match its checksum");
            }
        } catch (InvalidContent unreadable) {
            damages.add(place + ": revision " + number + " cannot be read");
        }
    }

    private void closeSheet() {
        if (sheet != null && last != head) {
            damages.add(place + ": the newest revision should be " + head + " but is " + last);
        }
    }

    Archive.Verified finish() {
        closeSheet();
        return new Archive.Verified(revisions, damages);
    }
}
