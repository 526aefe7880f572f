package rosinbook.web;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;

/** Requests as no decent client would send them. */
final class RawHttp {
    private RawHttp() {}

    /** Status of the answer to exactly these header lines. */
    static int status(Api api, String... lines) throws IOException {
        String answer = exchange(api, String.join("\r\n", lines) + "\r\nConnection: close\r\n\r\n");
        return Integer.parseInt(answer.split(" ")[1]);
    }

    /** The whole answer to exactly these bytes. */
    static String exchange(Api api, String request) throws IOException {
        try (Socket socket = new Socket(
                InetAddress.getLoopbackAddress(), URI.create(api.address).getPort())) {
            socket.setSoTimeout(10_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
