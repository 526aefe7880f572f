package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;

/** What a meter showed at one step of the meter plan. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "read")
@JsonSubTypes({
    @JsonSubTypes.Type(value = MeterReading.Ohms.class, name = "ohms"),
    @JsonSubTypes.Type(value = MeterReading.NoConnection.class, name = "open"),
    @JsonSubTypes.Type(value = MeterReading.Volts.class, name = "volts")
})
public sealed interface MeterReading {
    /** In a player's words, such as {@code 4.7 kΩ}. */
    String describe();

    /**
     * A resistance.
     *
     * @param ohms Ω, 0 to 1e12
     */
    record Ohms(double ohms) implements MeterReading {
        /** @throws IllegalArgumentException if {@code ohms} is below 0 or not finite */
        public Ohms {
            Require.within("ohms", ohms, 0, 1e12, "ohms");
        }

        @Override
        public String describe() {
            return Figures.ohms(ohms);
        }
    }

    /** No connection: the meter showed its "over range" sign. */
    record NoConnection() implements MeterReading {
        @Override
        public String describe() {
            return "open";
        }
    }

    /**
     * A steady voltage against ground.
     *
     * @param volts V, -1000 to 1000
     */
    record Volts(double volts) implements MeterReading {
        /** @throws IllegalArgumentException if {@code volts} is not finite or beyond 1000 */
        public Volts {
            Require.within("volts", volts, -1000, 1000, "volts");
        }

        @Override
        public String describe() {
            return Figures.volts(volts);
        }
    }
}
