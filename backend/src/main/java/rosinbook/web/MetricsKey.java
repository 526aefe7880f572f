package rosinbook.web;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;

/** Opens the metrics and nothing else; sent as a bearer token (RFC 6750). */
public record MetricsKey(String text) {
    private static final int LEAST = 24;

    /** @throws IllegalArgumentException if it could be guessed */
    public MetricsKey {
        if (text.length() < LEAST) {
            throw new IllegalArgumentException(
                    "the key for the metrics has " + text.length() + " characters; use " + LEAST + " or more");
        }
    }

    /** Takes as long for any other key of the same length. */
    boolean is(String brought) {
        return MessageDigest.isEqual(text.getBytes(StandardCharsets.UTF_8), brought.getBytes(StandardCharsets.UTF_8));
    }

    @Override
    public String toString() {
        return "MetricsKey[…]";
    }
}
