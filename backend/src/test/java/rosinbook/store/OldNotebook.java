package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.nio.file.Path;
import rosinbook.notebook.ContentJson;

/** A notebook as an earlier version left it, written in plain SQL because today's code knows today's tables only. */
final class OldNotebook {
    private static final String ID = "0b2c6a52-6f0e-4f0c-9f0b-3f6f5f0c7a11";
    private static final String CONTENT = "{\"title\":\"One\"}";

    private OldNotebook() {}

    /** Writes one with tables of that version. */
    static Path write(Path folder, String version) {
        Database.inEmptyFolder(folder, old -> {
                    old.migrations().to(version);
                    old.change(sql -> {
                        sql.execute(
                                "INSERT INTO notebook VALUES (?, 'Rosinbook', TIMESTAMP WITH TIME ZONE"
                                        + " '2026-01-01 12:00:00+00')",
                                DatabaseSheetStore.ONLY_NOTEBOOK);
                        sql.execute(
                                "INSERT INTO sheet VALUES (CAST(? AS UUID), ?, 'pieces', 1, 'One', 'one', NULL, FALSE,"
                                        + " TIMESTAMP WITH TIME ZONE '2026-01-01 12:00:00+00')",
                                ID,
                                DatabaseSheetStore.ONLY_NOTEBOOK);
                        return sql.execute(
                                "INSERT INTO revision VALUES (?, CAST(? AS UUID), 1, NULL, 1, ?, ?, TIMESTAMP WITH"
                                        + " TIME ZONE '2026-01-01 12:00:00+00', 'Mira', '')",
                                DatabaseSheetStore.ONLY_NOTEBOOK,
                                ID,
                                CONTENT,
                                ContentJson.sha256(CONTENT));
                    });
                })
                .close();
        return folder;
    }

    /** What was written is read back from a running service. */
    static void check(String address) throws IOException {
        try (InputStream answer = URI.create(address + "api/pieces/" + ID + "/revisions/1")
                .toURL()
                .openStream()) {
            assertEquals(
                    ContentJson.sha256(CONTENT),
                    ContentJson.parse(answer.readAllBytes()).path("sha256").asText());
        }
    }
}
