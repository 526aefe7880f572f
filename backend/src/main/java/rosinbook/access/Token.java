package rosinbook.access;

import java.security.SecureRandom;
import java.util.Base64;
import rosinbook.notebook.ContentJson;

/**
 * A secret that opens a session or an invitation.
 *
 * @param text 22 characters of base64url: 128 random bits
 * @see "OWASP ASVS 5.0, 7.2.3: session tokens of at least 128 bits of entropy"
 */
record Token(String text) {
    private static final int BYTES = 16;

    static Token random(SecureRandom source) {
        byte[] bytes = new byte[BYTES];
        source.nextBytes(bytes);
        return new Token(Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
    }

    /** What is stored of it. */
    String sha256() {
        return ContentJson.sha256(text);
    }

    /** Nothing: a token must not end up in a log. */
    @Override
    public String toString() {
        return "Token[…]";
    }
}
