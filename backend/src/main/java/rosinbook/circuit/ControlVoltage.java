package rosinbook.circuit;

/**
 * What a control pin of the synth gets.
 *
 * @param pin label on the synth's connector
 * @param line key of its control line
 * @param switches setting of the switches in words; empty when there is none or it does not matter
 * @param volts nominal, under load, V
 * @param minVolts lowest over the tolerances of resistors and rails, V
 * @param maxVolts highest over them, V
 * @param meaning of the band {@code volts} falls into; empty for none
 */
public record ControlVoltage(
        String pin, String line, String switches, double volts, double minVolts, double maxVolts, String meaning) {}
