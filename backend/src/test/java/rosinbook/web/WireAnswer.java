package rosinbook.web;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads an answer off the wire, where a client of the JDK would have its own opinion of the request. */
final class WireAnswer {
    private WireAnswer() {}

    /** The answer up to the end of the connection; null if nothing came. */
    static Answer read(InputStream from) throws IOException {
        ByteArrayOutputStream all = new ByteArrayOutputStream();
        try {
            from.transferTo(all);
        } catch (SocketException reset) {
            // what came before counts
        }
        byte[] bytes = all.toByteArray();
        String text = new String(bytes, StandardCharsets.ISO_8859_1);
        int headEnd = text.indexOf("\r\n\r\n");
        if (headEnd < 0) {
            return null;
        }
        String[] lines = text.substring(0, headEnd).split("\r\n");
        Map<String, List<String>> headers = new LinkedHashMap<>();
        for (int i = 1; i < lines.length; i++) {
            String[] header = lines[i].split(":", 2);
            headers.computeIfAbsent(header[0], name -> new ArrayList<>()).add(header[1].strip());
        }
        byte[] body = java.util.Arrays.copyOfRange(bytes, headEnd + 4, bytes.length);
        Answer answer = new Answer(Integer.parseInt(lines[0].split(" ")[1]), headers, body);
        return answer.header("Transfer-Encoding").equals("chunked")
                ? new Answer(answer.status(), headers, dechunked(body))
                : answer;
    }

    private static byte[] dechunked(byte[] chunked) {
        ByteArrayOutputStream whole = new ByteArrayOutputStream();
        int at = 0;
        while (at < chunked.length) {
            int lineEnd = at;
            while (chunked[lineEnd] != '\r') {
                lineEnd++;
            }
            int size = Integer.parseInt(new String(chunked, at, lineEnd - at, StandardCharsets.ISO_8859_1), 16);
            whole.write(chunked, lineEnd + 2, size);
            at = lineEnd + 2 + size + 2;
        }
        return whole.toByteArray();
    }
}
