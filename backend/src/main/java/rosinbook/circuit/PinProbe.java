package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * All readings of one pin.
 *
 * @param silence with nothing played; absent when not measured
 * @param bowed while one string is bowed and the others are damped, by string number; may be empty
 * @param toGround resistance to ground with everything off; absent when not measured
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record PinProbe(ProbeReading silence, Map<Integer, ProbeReading> bowed, MeterReading toGround) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public PinProbe {
        Map<Integer, ProbeReading> given = bowed == null ? Map.of() : bowed;
        given.forEach((string, reading) -> {
            Require.within("bowed", string == null ? 0 : string, 1, 12, "string numbers");
            Require.present("bowed", reading, "string " + string + " has no reading");
        });
        bowed = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(given));
        if (toGround instanceof MeterReading.Volts) {
            throw new IllegalArgumentException("toGround is in volts; give ohms, or say that it is open");
        }
    }

    /** Alternating millivolts by bowed string, where measured. */
    Map<Integer, Double> bowedMillivolts() {
        Map<Integer, Double> millivolts = new LinkedHashMap<>();
        bowed.forEach((string, reading) -> {
            if (reading.acMillivolts() != null) {
                millivolts.put(string, reading.acMillivolts());
            }
        });
        return millivolts;
    }

    /** Alternating millivolts with nothing played, where measured. */
    Optional<Double> silentMillivolts() {
        return Optional.ofNullable(silence).map(ProbeReading::acMillivolts);
    }

    /** Every steady voltage that was measured. */
    double[] steadyVolts() {
        return java.util.stream.Stream.concat(java.util.stream.Stream.ofNullable(silence), bowed.values().stream())
                .filter(reading -> reading.dcVolts() != null)
                .mapToDouble(ProbeReading::dcVolts)
                .toArray();
    }

    /** Whether it measures as joined to ground. */
    boolean isShorted() {
        return toGround instanceof MeterReading.Ohms ohms && ohms.ohms() <= MeterPlan.WIRE_OHMS;
    }
}
