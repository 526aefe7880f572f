package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;

/**
 * A wiring as it is handed over: the shape of a wiring file, version 1, and of what the bench is asked over HTTP.
 *
 * @param format {@code rosinbook wiring}; may be left out
 * @param version 1; may be left out
 * @param instrument connector, open notes, pickup
 * @param synth connector, control lines, what its inputs expect, supply
 * @param adapter routes and parts; when left out one is proposed
 * @param wantedVolts for a proposal: what each control line should get, V, by its key
 * @param readings what the meter showed, by step of the meter plan
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record WiringFile(
        String format,
        Integer version,
        InstrumentSide instrument,
        SynthSide synth,
        Adapter adapter,
        Map<String, Double> wantedVolts,
        Map<String, MeterReading> readings) {
    private static final String FORMAT = "rosinbook wiring";
    private static final int VERSION = 1;

    /** @throws IllegalArgumentException starting with the field that is wrong */
    public WiringFile {
        if (format != null && !format.equals(FORMAT)) {
            throw new IllegalArgumentException("format is not '" + FORMAT + "'; is this another kind of file?");
        }
        if (version != null && version != VERSION) {
            throw new IllegalArgumentException("version is " + version + "; this program reads version " + VERSION);
        }
        Require.present("instrument", instrument, "give its connector with its pins");
        Require.present("synth", synth, "give its connector with its pins");
        wantedVolts = wantedVolts == null ? Map.of() : wantedVolts;
        wantedVolts.forEach((line, volts) -> {
            if (volts == null || !(Math.abs(volts) <= 60)) {
                throw new IllegalArgumentException(
                        "wantedVolts of '" + line + "' is " + volts + "; give volts from -60 to 60");
            }
        });
        readings = readings == null ? Map.of() : readings;
    }

    /**
     * Two sides with what is known between them.
     *
     * @param adapter null when nothing is built or drawn yet
     */
    public static WiringFile of(
            InstrumentSide instrument, SynthSide synth, Adapter adapter, Map<String, MeterReading> readings) {
        return new WiringFile(FORMAT, VERSION, instrument, synth, adapter, Map.of(), readings);
    }

    /** An adapter to start from, whatever adapter there is already. @param parts the usual ones if null */
    public Proposal proposal(Parts parts) {
        return AdapterProposal.of(instrument, synth, parts == null ? Parts.USUAL : parts, wantedVolts);
    }

    /** The wiring to work on: with its own adapter, or with a proposed one. */
    public Worked worked() {
        if (adapter != null) {
            return new Worked(new Wiring(instrument, synth, adapter, readings), false, List.of());
        }
        Proposal proposal = proposal(null);
        return new Worked(new Wiring(instrument, synth, proposal.adapter(), readings), true, proposal.remarks());
    }

    /**
     * A whole wiring.
     *
     * @param wiring ready for the bench
     * @param isProposed whether its adapter was proposed just now
     * @param remarks of the proposal; empty otherwise
     */
    public record Worked(Wiring wiring, boolean isProposed, List<String> remarks) {
        /** Copies the list. */
        public Worked {
            remarks = List.copyOf(remarks);
        }
    }
}
