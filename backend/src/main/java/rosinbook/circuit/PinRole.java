package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/** What a contact carries. On the synth's connector, string n means input n. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "carries")
@JsonSubTypes({
    @JsonSubTypes.Type(value = PinRole.StringSignal.class, name = "string"),
    @JsonSubTypes.Type(value = PinRole.Mixed.class, name = "mixed"),
    @JsonSubTypes.Type(value = PinRole.Supply.class, name = "supply"),
    @JsonSubTypes.Type(value = PinRole.Ground.class, name = "ground"),
    @JsonSubTypes.Type(value = PinRole.Control.class, name = "control"),
    @JsonSubTypes.Type(value = PinRole.SwitchLine.class, name = "switch"),
    @JsonSubTypes.Type(value = PinRole.Unused.class, name = "unused"),
    @JsonSubTypes.Type(value = PinRole.Unknown.class, name = "unknown")
})
public sealed interface PinRole {
    /** In a player's words, without article or full stop, such as {@code string 3} or {@code supply +7 V}; see also {@link Plug}. */
    String describe();

    /**
     * The signal of one string, or the synth's input for it.
     *
     * @param string 1 is the highest string; 1 to 12
     */
    record StringSignal(int string) implements PinRole {
        /** @throws IllegalArgumentException if {@code string} is outside 1 to 12 */
        public StringSignal {
            Require.within("string", string, 1, 12, "a number");
        }

        @Override
        public String describe() {
            return "string " + string;
        }
    }

    /** All strings together, or what the instrument's own amplifier would get. */
    record Mixed() implements PinRole {
        @Override
        public String describe() {
            return "mixed signal";
        }
    }

    /**
     * A supply rail: on the synth's connector it gives current, on the instrument's it takes it.
     *
     * @param volts V against ground, -60 to 60 and not 0
     * @param maxMilliamps what the rail can give (or, on the instrument, takes), mA, above 0; absent when not known
     * @param tolerancePercent how far the rail may be off, 0 to 50 %; absent when not known
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Supply(double volts, Double maxMilliamps, Double tolerancePercent) implements PinRole {
        /** @throws IllegalArgumentException starting with the field that is wrong */
        public Supply {
            Require.within("volts", volts, -60, 60, "volts");
            if (volts == 0) {
                throw new IllegalArgumentException("volts is 0; give the rail's voltage, or call the pin ground");
            }
            if (maxMilliamps != null && !(maxMilliamps > 0 && maxMilliamps <= 10_000)) {
                throw new IllegalArgumentException("maxMilliamps is " + Figures.plain(maxMilliamps)
                        + "; give milliamps above 0 and at most 10000, or leave it out");
            }
            if (tolerancePercent != null) {
                Require.within("tolerancePercent", tolerancePercent, 0, 50, "percent");
            }
        }

        /** A rail of which only the voltage is known. */
        public static Supply of(double volts) {
            return new Supply(volts, null, null);
        }

        @Override
        public String describe() {
            return "supply " + (volts > 0 ? "+" : "\u2212") + Figures.plain(Math.abs(volts)) + " V";
        }
    }

    /** Signal ground, to which all voltages refer. */
    record Ground() implements PinRole {
        @Override
        public String describe() {
            return "ground";
        }
    }

    /**
     * A line that the synth reads as a voltage.
     *
     * @param line the key of one of the synth's control lines, 1 to 40 characters
     */
    record Control(String line) implements PinRole {
        /** @throws IllegalArgumentException if {@code line} is empty or too long */
        public Control {
            line = Require.line("line", line, 1, 40);
        }

        @Override
        public String describe() {
            return "control line " + line;
        }
    }

    /**
     * A line that the instrument closes or opens, such as a push button.
     *
     * @param line the key of one of the synth's control lines, 1 to 40 characters
     */
    record SwitchLine(String line) implements PinRole {
        /** @throws IllegalArgumentException if {@code line} is empty or too long */
        public SwitchLine {
            line = Require.line("line", line, 1, 40);
        }

        @Override
        public String describe() {
            return "switch line " + line;
        }
    }

    /** Known to carry nothing. */
    record Unused() implements PinRole {
        @Override
        public String describe() {
            return "unused";
        }
    }

    /** Nobody has found out yet. */
    record Unknown() implements PinRole {
        @Override
        public String describe() {
            return "not known yet";
        }
    }
}
