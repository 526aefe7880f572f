package rosinbook.access;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;

/**
 * A passphrase as it was typed.
 *
 * @param text 15 to 200 characters, any of them
 * @see "OWASP ASVS 5.0, 6.2: 15 characters recommended, at least 64 allowed, no rules about which"
 */
public record Passphrase(String text) {
    /** Fewest characters. */
    public static final int SHORTEST = 15;

    /** Most characters. */
    public static final int LONGEST = 200;

    private static final int MEMORY_KIBIBYTES = 19 * 1024;
    private static final int ITERATIONS = 2;
    private static final int LANES = 1;
    private static final Argon2Function ARGON2 =
            Argon2Function.getInstance(MEMORY_KIBIBYTES, ITERATIONS, LANES, 32, Argon2.ID);

    /** @throws IllegalArgumentException if it is too short or too long */
    public Passphrase {
        if (!hasItsLength(text)) {
            throw new IllegalArgumentException("a passphrase has " + SHORTEST + " to " + LONGEST
                    + " characters; a few words of your own are easiest to keep in mind");
        }
    }

    /** Whether {@code typed} is neither too short nor too long. */
    static boolean hasItsLength(String typed) {
        return typed.length() >= SHORTEST && typed.length() <= LONGEST;
    }

    /** What is stored of it: Argon2id with a random salt, in the usual textual form. */
    String hash() {
        return Password.hash(text).addRandomSalt(16).with(ARGON2).getResult();
    }

    /** Whether a stored hash was made from {@code typed}, which may be any text. */
    static boolean matches(String typed, String hash) {
        return Password.check(typed, hash).with(Argon2Function.getInstanceFromHash(hash));
    }

    /** Nothing: a passphrase must not end up in a log. */
    @Override
    public String toString() {
        return "Passphrase[…]";
    }
}
