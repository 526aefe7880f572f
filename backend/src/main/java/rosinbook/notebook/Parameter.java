package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.util.List;
import java.util.Optional;

/** Something a synth lets the player set. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
@JsonSubTypes({
    @JsonSubTypes.Type(value = Parameter.Range.class, name = "range"),
    @JsonSubTypes.Type(value = Parameter.Choice.class, name = "choice"),
    @JsonSubTypes.Type(value = Parameter.Switch.class, name = "switch"),
    @JsonSubTypes.Type(value = Parameter.Time.class, name = "time")
})
public sealed interface Parameter {
    String label();

    /** Place in lists, smallest first. */
    Double order();

    /** What is unusual about a value, in a sentence, or empty if it is one this parameter knows. */
    Optional<String> objection(ParameterValue given);

    /** Unit written behind a value; empty if it has none. */
    default String unit() {
        return "";
    }

    /**
     * A number on a scale.
     *
     * @param unit such as {@code dB} or {@code %}; may be empty
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    record Range(String label, Double order, Double min, Double max, Double step, String unit) implements Parameter {
        public Range {
            label = Require.title("label", label);
            order = Require.finite("order", order == null ? 0 : order);
            Require.finite("min", min);
            Require.finite("max", max);
            if (max <= min) {
                throw new IllegalArgumentException("max is " + max + "; it must be above min, " + min);
            }
            step = Require.within("step", step == null ? 1 : step, 1e-6, max - min, "(no wider than the range)");
            unit = Require.limited("unit", unit == null ? "" : unit, 20);
        }

        @Override
        public Optional<String> objection(ParameterValue given) {
            if (!(given instanceof ParameterValue.Number number)) {
                return Optional.of(label + " is usually a number");
            }
            return number.amount() >= min && number.amount() <= max
                    ? Optional.empty()
                    : Optional.of(label + " usually runs from " + Words.number(min) + " to " + Words.number(max));
        }
    }

    /** One of several words. */
    record Choice(String label, Double order, List<String> choices) implements Parameter {
        public Choice {
            label = Require.title("label", label);
            order = Require.finite("order", order == null ? 0 : order);
            Require.present("choices", choices);
            if (choices.isEmpty() || choices.size() > 500) {
                throw new IllegalArgumentException("choices has " + choices.size() + "; give 1 to 500");
            }
            choices.forEach(choice -> Require.title("choices", choice));
            choices = List.copyOf(choices);
        }

        @Override
        public Optional<String> objection(ParameterValue given) {
            return given instanceof ParameterValue.Text text && choices.contains(text.words())
                    ? Optional.empty()
                    : Optional.of(label + " has no such choice in the synth's sheet");
        }
    }

    /** On or off. */
    record Switch(String label, Double order) implements Parameter {
        public Switch {
            label = Require.title("label", label);
            order = Require.finite("order", order == null ? 0 : order);
        }

        @Override
        public Optional<String> objection(ParameterValue given) {
            return given instanceof ParameterValue.OnOff
                    ? Optional.empty()
                    : Optional.of(label + " is usually on or off");
        }
    }

    /** A time, in milliseconds or as a note value of the piece's tempo. */
    record Time(String label, Double order, Double minMillis, Double maxMillis) implements Parameter {
        public Time {
            label = Require.title("label", label);
            order = Require.finite("order", order == null ? 0 : order);
            Require.within("minMillis", minMillis, 0, 600_000, "ms");
            Require.within("maxMillis", maxMillis, minMillis, 600_000, "ms");
        }

        @Override
        public String unit() {
            return "ms";
        }

        @Override
        public Optional<String> objection(ParameterValue given) {
            if (given instanceof ParameterValue.Note) {
                return Optional.empty();
            }
            if (!(given instanceof ParameterValue.Number number)) {
                return Optional.of(label + " is usually a time in ms or a note value");
            }
            return number.amount() >= minMillis && number.amount() <= maxMillis
                    ? Optional.empty()
                    : Optional.of(label + " usually runs from " + Words.number(minMillis) + " to "
                            + Words.number(maxMillis) + " ms");
        }
    }
}
