package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** How loud a stroke was meant to be, from softest to loudest. */
public enum Loudness {
    SOFT,
    MEDIUM,
    LOUD;

    /** @throws IllegalArgumentException if the word is none of soft, medium, loud */
    @JsonCreator
    public static Loudness parse(String word) {
        for (Loudness loudness : values()) {
            if (loudness.toString().equalsIgnoreCase(word)) {
                return loudness;
            }
        }
        throw new IllegalArgumentException("a stroke is soft, medium or loud, not '" + Words.shortened(word) + "'");
    }

    @JsonValue
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
