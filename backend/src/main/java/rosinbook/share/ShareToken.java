package rosinbook.share;

import java.security.SecureRandom;
import java.util.Base64;
import java.util.Optional;
import java.util.random.RandomGenerator;
import rosinbook.notebook.ContentJson;

/**
 * The secret part of a share's address.
 *
 * @param text 22 characters of base64url: 16 random bytes, 128 bits
 * @see "OWASP ASVS 5.0, 11.5.1: at least 128 bits from a cryptographically secure generator"
 */
public record ShareToken(String text) {
    private static final int BYTES = 16;

    /** @throws IllegalArgumentException if the text has not the shape of a token */
    public ShareToken {
        if (!text.matches("[A-Za-z0-9_-]{22}")) {
            throw new IllegalArgumentException("not the shape of a token");
        }
    }

    /** A new one. */
    public static ShareToken random(SecureRandom source) {
        byte[] bytes = new byte[BYTES];
        ((RandomGenerator) source).nextBytes(bytes);
        return new ShareToken(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    /** The token in a text from outside; empty if it has not the shape of one. */
    public static Optional<ShareToken> parse(String text) {
        try {
            return Optional.of(new ShareToken(text));
        } catch (IllegalArgumentException notAToken) {
            return Optional.empty();
        }
    }

    /** What is stored of it. */
    public String sha256() {
        return ContentJson.sha256(text);
    }

    /** Nothing: a token must not end up in a log. */
    @Override
    public String toString() {
        return "ShareToken[…]";
    }
}
