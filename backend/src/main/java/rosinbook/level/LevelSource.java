package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Locale;

/** What levels were taken from. Levels of different sources have no common zero. */
public enum LevelSource {
    RECORDING("a recording"),
    METER("a meter's readings"),
    TAKE("a MIDI take");

    private final String words;

    LevelSource(String words) {
        this.words = words;
    }

    /** With its article: {@code a recording}. */
    public String words() {
        return words;
    }

    static LevelSource of(LevelUnit unit) {
        return switch (unit) {
            case DBFS -> RECORDING;
            case METER_DB -> METER;
            case VELOCITY_DB -> TAKE;
        };
    }

    /** @throws IllegalArgumentException if the word is none of recording, meter, take */
    @JsonCreator
    public static LevelSource parse(String word) {
        for (LevelSource source : values()) {
            if (source.toString().equals(word)) {
                return source;
            }
        }
        throw new IllegalArgumentException("source is '" + Words.shortened(word) + "'; it is recording, meter or take");
    }

    @JsonValue
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
