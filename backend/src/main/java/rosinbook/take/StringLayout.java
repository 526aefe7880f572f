package rosinbook.take;

import com.fasterxml.jackson.annotation.JsonProperty;

/**
 * How a file tells the strings apart.
 *
 * @param by what a string is recognised by
 * @param baseChannel the lowest channel used, 1 to 16; counts only {@link By#CHANNEL by channel}
 * @param highestFirst whether the base channel, or the first track, is the highest string
 */
public record StringLayout(By by, int baseChannel, boolean highestFirst) {
    /** What a string is recognised by. */
    public enum By {
        /** One channel a string, as in MIDI's mono mode; the usual way. */
        @JsonProperty("channel")
        CHANNEL,
        /** One track a string. */
        @JsonProperty("track")
        TRACK,
        /** Everything on one channel: strings cannot be told apart, and leaks between them not be found. */
        @JsonProperty("nothing")
        NOTHING
    }

    /** @throws IllegalArgumentException if {@code baseChannel} is outside 1 to 16 */
    public StringLayout {
        if (baseChannel < 1 || baseChannel > 16) {
            throw new IllegalArgumentException("base channel " + baseChannel + " is outside 1 to 16");
        }
    }

    /** One channel a string, the base channel being string 1. */
    public static StringLayout fromChannel(int baseChannel) {
        return new StringLayout(By.CHANNEL, baseChannel, true);
    }

    /**
     * The string of a note.
     *
     * @param channel 1 to 16
     * @param track place among the tracks that hold notes, 0 first
     * @param strings how many strings the instrument has
     * @return 1 to {@code strings}, or 0 if the note belongs to none of them
     */
    public int string(int channel, int track, int strings) {
        int place =
                switch (by) {
                    case CHANNEL -> channel - baseChannel;
                    case TRACK -> track;
                    case NOTHING -> 0;
                };
        if (by == By.NOTHING) {
            return 1;
        }
        if (place < 0 || place >= strings) {
            return 0;
        }
        return highestFirst ? place + 1 : strings - place;
    }
}
