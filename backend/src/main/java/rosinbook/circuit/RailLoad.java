package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonInclude;

/**
 * What a supply rail of the synth must give.
 *
 * @param pin label on the synth's connector
 * @param volts nominal, V
 * @param milliamps through dividers and preamps, and what the instrument is stated to take, mA, never negative
 * @param maxMilliamps what it can give; absent when nobody stated it
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record RailLoad(String pin, double volts, double milliamps, Double maxMilliamps) {}
