/**
 * The wiring bench: from two connectors that were never meant for each other to an adapter that is safe to plug in.
 *
 * <p><b>Conventions.</b> String 1 is the highest. On the synth's connector "string n" is input n. Volts are against
 * ground, ohms, milliamps, milliwatts; a unit stands in each name. Maps are keyed by what a thing is called (pin label,
 * route id, control line), so that two revisions compare entry by entry. An absent field means "not known" or "does not
 * take part", never zero; where a usual value exists it is filled in.
 */
package rosinbook.circuit;
