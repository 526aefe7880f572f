package rosinbook.store;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** ZIPs as texts by name. */
final class Zips {
    private Zips() {}

    static Map<String, String> contents(byte[] zip) throws IOException {
        Map<String, String> contents = new TreeMap<>();
        try (ZipInputStream source = new ZipInputStream(new ByteArrayInputStream(zip))) {
            for (ZipEntry entry = source.getNextEntry(); entry != null; entry = source.getNextEntry()) {
                contents.put(entry.getName(), new String(source.readAllBytes(), StandardCharsets.UTF_8));
            }
        }
        return contents;
    }

    static byte[] zip(Map<String, String> contents) throws IOException {
        var bytes = new java.io.ByteArrayOutputStream();
        try (ZipOutputStream target = new ZipOutputStream(bytes)) {
            for (Map.Entry<String, String> entry : contents.entrySet()) {
                target.putNextEntry(new ZipEntry(entry.getKey()));
                target.write(entry.getValue().getBytes(StandardCharsets.UTF_8));
            }
        }
        return bytes.toByteArray();
    }
}
