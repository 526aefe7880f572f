package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.Map;

/** What stands in the way from one pin to another. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "via")
@JsonSubTypes({
    @JsonSubTypes.Type(value = Via.Straight.class, name = "straight"),
    @JsonSubTypes.Type(value = Via.Preamp.class, name = "preamp"),
    @JsonSubTypes.Type(value = Via.Resistor.class, name = "resistor"),
    @JsonSubTypes.Type(value = Via.Divider.class, name = "divider"),
    @JsonSubTypes.Type(value = Via.Switch.class, name = "switch"),
    @JsonSubTypes.Type(value = Via.Tied.class, name = "tied"),
    @JsonSubTypes.Type(value = Via.Open.class, name = "open")
})
public sealed interface Via {
    /** In a player's words, such as {@code resistor 4.7 kΩ}. */
    String describe();

    /** A wire. */
    record Straight() implements Via {
        @Override
        public String describe() {
            return "straight";
        }
    }

    /**
     * A small amplifier close to the pickup.
     *
     * @param gainDecibels -60 to 60 dB
     * @param supplyMilliamps what it draws from each rail, 0 to 1000 mA; 0 when it has a battery of its own
     * @param inputOhms what it puts across the pickup, Ω; absent when not known
     * @param supplyPin the synth's pin that feeds it; absent when none is chosen yet
     * @param negativeSupplyPin the synth's pin for its negative side; absent when it runs from one rail
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Preamp(
            double gainDecibels, double supplyMilliamps, Double inputOhms, String supplyPin, String negativeSupplyPin)
            implements Via {
        /** @throws IllegalArgumentException starting with the field that is wrong */
        public Preamp {
            Require.within("gainDecibels", gainDecibels, -60, 60, "decibels");
            Require.within("supplyMilliamps", supplyMilliamps, 0, 1000, "milliamps");
            if (inputOhms != null) {
                Require.ohms("inputOhms", inputOhms);
            }
            supplyPin = supplyPin == null ? null : Require.line("supplyPin", supplyPin, 1, 12);
            negativeSupplyPin =
                    negativeSupplyPin == null ? null : Require.line("negativeSupplyPin", negativeSupplyPin, 1, 12);
        }

        @Override
        public String describe() {
            String feed = supplyMilliamps == 0
                    ? "battery"
                    : Figures.plain(supplyMilliamps) + " mA"
                            + (supplyPin == null ? "" : " from synth pin " + supplyPin);
            return "preamp " + (gainDecibels < 0 ? "\u2212" : "+") + Figures.plain(Math.abs(gainDecibels)) + " dB, "
                    + feed;
        }
    }

    /**
     * A resistor in series.
     *
     * @param ohms Ω, above 0
     */
    record Resistor(double ohms) implements Via {
        /** @throws IllegalArgumentException if {@code ohms} is not finite and above 0 */
        public Resistor {
            Require.ohms("ohms", ohms);
        }

        @Override
        public String describe() {
            return "resistor " + Figures.ohms(ohms);
        }
    }

    /**
     * Two resistors in a row to ground; the synth's pin gets the point between them.
     *
     * @param upperOhms from the source to the synth's pin, Ω, above 0
     * @param lowerOhms from the synth's pin to ground, Ω, above 0
     * @param supplyPin the synth's rail that is divided; absent when the route's instrument pin is
     * @param targetVolts what the synth's pin is meant to get, V; absent when any voltage in range will do
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Divider(double upperOhms, double lowerOhms, String supplyPin, Double targetVolts) implements Via {
        /** @throws IllegalArgumentException starting with the field that is wrong */
        public Divider {
            Require.ohms("upperOhms", upperOhms);
            Require.ohms("lowerOhms", lowerOhms);
            supplyPin = supplyPin == null ? null : Require.line("supplyPin", supplyPin, 1, 12);
            if (targetVolts != null) {
                Require.within("targetVolts", targetVolts, -60, 60, "volts");
            }
        }

        @Override
        public String describe() {
            return "divider " + Figures.ohms(upperOhms) + " over " + Figures.ohms(lowerOhms)
                    + (supplyPin == null ? "" : " from synth pin " + supplyPin);
        }
    }

    /**
     * A switch that puts one of several things in the way.
     *
     * @param positions what each position does, by the word written beside it (1 to 40 characters), 2 to 6; no switch
     *     among them
     */
    record Switch(Map<String, Via> positions) implements Via {
        /** @throws IllegalArgumentException starting with {@code positions} */
        public Switch {
            positions = Require.keyed("positions", positions, 2, 6, 40);
            if (positions.values().stream().anyMatch(Switch.class::isInstance)) {
                throw new IllegalArgumentException("positions has a switch behind a switch; make it two routes");
            }
        }

        @Override
        public String describe() {
            return "switch "
                    + String.join(
                            "; ",
                            positions.entrySet().stream()
                                    .map(position -> position.getKey() + ": "
                                            + position.getValue().describe())
                                    .toList());
        }
    }

    /**
     * Tied down to ground, as for an input that no string feeds.
     *
     * @param ohms through which it is tied, Ω; 0 (also when left out) is a wire
     */
    record Tied(double ohms) implements Via {
        /** @throws IllegalArgumentException if {@code ohms} is not finite or below 0 */
        public Tied {
            if (ohms != 0) {
                Require.ohms("ohms", ohms);
            }
        }

        @Override
        public String describe() {
            return ohms == 0 ? "tied to ground" : "tied to ground by " + Figures.ohms(ohms);
        }
    }

    /** Left open on purpose. */
    record Open() implements Via {
        @Override
        public String describe() {
            return "left open";
        }
    }
}
