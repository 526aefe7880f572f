package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What a meter showed between a pin and ground under one condition.
 *
 * @param acMillivolts alternating voltage, mV, 0 to 100 000; absent when not measured
 * @param dcVolts steady voltage, V, -1000 to 1000; absent when not measured
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record ProbeReading(Double acMillivolts, Double dcVolts) {
    /** @throws IllegalArgumentException starting with the field that is wrong */
    public ProbeReading {
        if (acMillivolts != null) {
            Require.within("acMillivolts", acMillivolts, 0, 100_000, "millivolts");
        }
        if (dcVolts != null) {
            Require.within("dcVolts", dcVolts, -1000, 1000, "volts");
        }
    }
}
