package rosinbook.store;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Content;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Rig;

/** Checks revisions as they come, sheet by sheet in the order of their numbers. */
final class Verification {
    private final List<String> damages = new ArrayList<>();
    private final Set<Blob> blobs;
    private int revisions;
    private UUID sheet;
    private String place = "";
    private int head;
    private int last;
    private Optional<Kind> kindOfSheet = Optional.empty();

    private final BesideRows beside;

    /**
     * @param blobs every file there is
     * @param beside what is kept beside the sheets
     */
    Verification(Set<Blob> blobs, BesideRows beside) {
        this.blobs = Set.copyOf(blobs);
        this.beside = beside;
    }

    void checkBlob(Blob blob, byte[] bytes) {
        if (bytes.length == 0 || !Blob.of(bytes).equals(blob)) {
            damages.add("file " + blob.sha256() + " does not match its checksum");
        }
    }

    void check(UUID sheetId, String kind, int headNumber, int number, String content, String sha256) {
        if (!sheetId.equals(sheet)) {
            closeSheet();
            sheet = sheetId;
            place = kind + " " + sheetId;
            head = headNumber;
            last = 0;
            kindOfSheet = Kind.ofPath(kind);
            if (kindOfSheet.isEmpty()) {
                damages.add(place + ": there is no such kind of sheet");
            }
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
            } else if (kindOfSheet.isPresent()) {
                checkAround(number, ContentJson.read(kindOfSheet.get(), json));
            }
        } catch (InvalidContent unreadable) {
            damages.add(place + ": revision " + number + " cannot be read");
        }
    }

    private void checkAround(int number, Content content) {
        if (!blobs.containsAll(content.blobs())) {
            damages.add(place + ": revision " + number + " names a file that is not there");
        }
        if (content instanceof Rig rig && !beside.agreesWithStrings(sheet, number, rig)) {
            damages.add(place + ": its strings do not agree with revision " + number);
        }
        if (number == head) {
            beside.strayOfNewest(sheet, content)
                    .forEach(stray -> damages.add(place + ": " + stray + " do not agree with revision " + number));
        }
    }

    /** A sheet without any revision. */
    void lost(String kind, UUID sheetId) {
        damages.add(kind + " " + sheetId + ": all its revisions are missing");
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
