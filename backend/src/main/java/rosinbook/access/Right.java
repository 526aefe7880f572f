package rosinbook.access;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a player may do in a notebook; each right includes those before it. */
public enum Right {
    READ,
    WRITE,
    OWN;

    /** Whether this right is enough where {@code needed} is asked for. */
    public boolean includes(Right needed) {
        return compareTo(needed) >= 0;
    }

    /** {@code read}, {@code write} or {@code own}, as it is sent and stored. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** The right of this word; empty if there is none. */
    public static Optional<Right> ofWord(String word) {
        return Arrays.stream(values())
                .filter(right -> right.word().equals(word))
                .findFirst();
    }
}
