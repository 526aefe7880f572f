package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.http.HttpRequest.BodyPublishers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.testing.SmallDisk;

/** Recordings on a disk for temporary files that has too little room for them. */
class UploadDiskIT {
    private static final byte[] MEGABYTE = new byte[1 << 20];

    @TempDir
    private Path folder;

    @Test
    void one_that_outgrows_the_disk_is_told_as_such_in_one_file_and_in_several() throws Exception {
        String before = System.getProperty("java.io.tmpdir");
        Path place = folder.resolve("disk");
        try (SmallDisk disk = SmallDisk.mount(place, 8)) {
            disk.leave(MEGABYTE.length);
            System.setProperty("java.io.tmpdir", place.toString());
            try (Api api = new Api()) {
                assertTold(send(api, "audio/wav", List.of(MEGABYTE, MEGABYTE)));
                List<byte[]> parts = new ArrayList<>();
                for (int i = 0; i < 2; i++) {
                    parts.add(("--b\r\nContent-Disposition: form-data; name=\"files\"; filename=\"" + i
                                    + ".wav\"\r\n\r\n")
                            .getBytes(StandardCharsets.UTF_8));
                    parts.add(MEGABYTE);
                    parts.add("\r\n".getBytes(StandardCharsets.UTF_8));
                }
                parts.add("--b--\r\n".getBytes(StandardCharsets.UTF_8));
                assertTold(send(api, "multipart/form-data; boundary=b", parts));
            }
        } finally {
            System.setProperty("java.io.tmpdir", before);
        }
    }

    private static Answer send(Api api, String type, List<byte[]> parts) {
        return api.send(
                api.to("/api/bench/levels").header("Content-Type", type).POST(BodyPublishers.ofByteArrays(parts)));
    }

    private static void assertTold(Answer answer) {
        String detail = answer.problem(507, "no-room").path("detail").asText();
        assertTrue(detail.contains("make room on it"), detail);
    }
}
