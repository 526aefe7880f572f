package rosinbook.web;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.SocketException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Requests as no decent client would send them. */
final class RawHttp {
    private RawHttp() {}

    /**
     * What came back.
     *
     * @param status 0 if nothing came
     */
    record Reply(int status, String text) {
        /** One answer, or none if the connection ends or 15 seconds pass; reads as much as its length says. */
        static Reply read(InputStream from) throws IOException {
            StringBuilder text = new StringBuilder();
            int bodyAt = -1;
            int length = Integer.MAX_VALUE;
            try {
                for (int next = from.read(); next >= 0; next = from.read()) {
                    text.append((char) next);
                    if (bodyAt < 0
                            && text.length() > 3
                            && text.substring(text.length() - 4).equals("\r\n\r\n")) {
                        bodyAt = text.length();
                        String said = new Reply(0, text.toString()).header("content-length");
                        length = said.isEmpty() ? Integer.MAX_VALUE : Integer.parseInt(said);
                    }
                    if (bodyAt >= 0 && text.length() - bodyAt >= length) {
                        break;
                    }
                }
            } catch (SocketException reset) {
                // what came before counts
            }
            String all = text.toString();
            return new Reply(all.startsWith("HTTP/1.1 ") ? Integer.parseInt(all.substring(9, 12)) : 0, all);
        }

        /** First header of that name; empty if there is none. */
        String header(String name) {
            for (String line : text.split("\r\n\r\n", 2)[0].split("\r\n")) {
                if (line.toLowerCase(Locale.ROOT).startsWith(name + ":")) {
                    return line.substring(name.length() + 1).strip();
                }
            }
            return "";
        }
    }

    /** Status of the answer to exactly these header lines. */
    static int status(Api api, String... lines) throws IOException {
        String answer = exchange(api, String.join("\r\n", lines) + "\r\nConnection: close\r\n\r\n");
        return Integer.parseInt(answer.split(" ")[1]);
    }

    /** A connection that fails rather than waits for more than 15 seconds. */
    static Socket open(Api api) throws IOException {
        return connected(api, new Socket());
    }

    /** As {@link #open}, and takes up little before it is read from. */
    static Socket openNarrow(Api api) throws IOException {
        Socket socket = new Socket();
        socket.setReceiveBufferSize(4096);
        return connected(api, socket);
    }

    private static Socket connected(Api api, Socket socket) throws IOException {
        socket.connect(address(api));
        socket.setSoTimeout(15_000);
        return socket;
    }

    static InetSocketAddress address(Api api) {
        return new InetSocketAddress(
                InetAddress.getLoopbackAddress(), URI.create(api.address).getPort());
    }

    /** The first answer to exactly these bytes. */
    static Reply reply(Api api, String request) throws IOException {
        try (Socket socket = open(api)) {
            try {
                socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            } catch (SocketException refusedWhileSending) {
                // the answer may be there already
            }
            return Reply.read(socket.getInputStream());
        }
    }

    /** The whole answer to exactly these bytes, until the connection closes. */
    static String exchange(Api api, String request) throws IOException {
        try (Socket socket = open(api)) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
