package rosinbook.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Base64;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class PassphraseTest {
    /** The textual form of the Password Hashing Competition's string format. */
    private static final Pattern HASH =
            Pattern.compile("\\$argon2id\\$v=19\\$m=(\\d+),t=(\\d+),p=(\\d+)\\$([A-Za-z0-9+/]+)\\$([A-Za-z0-9+/]+)");

    private static final String WORDS = "four strings and a bow";

    @Test
    void its_hash_costs_at_least_what_owasp_asks_for() {
        // OWASP Password Storage Cheat Sheet: "Use Argon2id with a minimum configuration of 19 MiB of memory, an
        // iteration
        // count of 2, and 1 degree of parallelism."
        Matcher hash = HASH.matcher(new Passphrase(WORDS).hash());
        assertTrue(hash.matches());
        assertTrue(Integer.parseInt(hash.group(1)) >= 19 * 1024, "memory in KiB: " + hash.group(1));
        assertTrue(Integer.parseInt(hash.group(2)) >= 2, "iterations: " + hash.group(2));
        assertTrue(Integer.parseInt(hash.group(3)) >= 1, "lanes: " + hash.group(3));
        // RFC 9106, section 3.1: 16 bytes of salt are recommended; section 4: a tag of 256 bits.
        assertEquals(16, Base64.getDecoder().decode(hash.group(4)).length);
        assertEquals(32, Base64.getDecoder().decode(hash.group(5)).length);
    }

    @Test
    void it_matches_a_hash_that_the_reference_implementation_made() {
        // phc-winner-argon2, src/test.c: argon2id, version 19, t=2, m=65536, p=1, "password" with the salt "somesalt".
        String hash = "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc";
        assertTrue(Passphrase.matches("password", hash));
        assertFalse(Passphrase.matches("passwore", hash));
    }

    @Test
    void the_same_words_are_never_hashed_alike_and_match_both_times() {
        Passphrase passphrase = new Passphrase(WORDS);
        String one = passphrase.hash();
        String other = passphrase.hash();
        assertNotEquals(one, other);
        assertTrue(Passphrase.matches(WORDS, one) && Passphrase.matches(WORDS, other));
        assertFalse(Passphrase.matches(WORDS + " ", one));
        assertFalse(Passphrase.matches("", one));
    }

    @Test
    void its_length_is_bounded_and_nothing_of_it_is_printed() {
        // OWASP ASVS 5.0, 6.2.1 and 6.2.9: 15 characters are recommended, 64 at least must be allowed.
        assertThrows(IllegalArgumentException.class, () -> new Passphrase("x".repeat(14)));
        assertThrows(IllegalArgumentException.class, () -> new Passphrase("x".repeat(201)));
        assertEquals("Passphrase[…]", new Passphrase("x".repeat(15)).toString());
        assertTrue(Passphrase.LONGEST >= 64);
    }
}
