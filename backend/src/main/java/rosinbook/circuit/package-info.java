/**
 * The wiring bench: from two connectors that were never meant for each other to an adapter that is safe to plug in.
 *
 * <p><b>What.</b> Finds out what pins carry from meter readings ({@link rosinbook.circuit.ProbeInference}), proposes an
 * adapter ({@link rosinbook.circuit.AdapterProposal}), finds the two resistors of a control voltage among all pairs of a
 * series (IEC 60063) over five decades ({@link rosinbook.circuit.DividerSearch}), checks an adapter rule by rule ({@link
 * rosinbook.circuit.WiringCheck}), predicts what a piezo loses on its way ({@link rosinbook.circuit.PiezoSource}), plans
 * measurements and judges readings ({@link rosinbook.circuit.MeterPlan}, {@link rosinbook.circuit.Diagnosis}), and hands
 * over a drawing, a SPICE netlist and a parts list with coloured rings (IEC 60062). {@link rosinbook.circuit.BenchSheet}
 * is all of it at once.
 *
 * <p><b>Conventions.</b> String 1 is the highest. On the synth's connector "string n" is input n. Volts are against ground,
 * ohms, milliamps, milliwatts; a unit stands in each name. Maps are keyed by what a thing is called (pin label, route id,
 * control line), so that two revisions compare entry by entry. An absent field means "not known" or "does not take part",
 * never zero; where a usual value exists it is filled in. Positions of pins are seen from the mating side unless the
 * connector says otherwise; the solder side is their mirror image. Messages of refused values start with the field's name.
 * Everything here is immutable or used by one call only, so every public method may be called from any thread.
 *
 * <p><b>Left out.</b> Anything but steady voltages in the check (no ripple, no crosstalk within the cable, no radio
 * interference); resonances of pickups; what a preamp does inside; the instrument's own controls, whose voltage only the
 * instrument knows; heat of parts beyond their rated power at room temperature. A connector's true numbering is never
 * guessed: pins without a noted place are drawn in order and the drawing says so.
 *
 * <p><b>Differences from the usual method.</b>
 *
 * <ol>
 *   <li>The divider search ranks by the loaded nominal output alone. Errors closer than 1e-12 of the supply count as equal;
 *       the lower Thevenin resistance then wins. Tolerances are reported, not optimised.
 *   <li>The current budget and the power rating are compared with nominal values; at the edge of all tolerances a rail gives
 *       about the sum of the tolerances more (6 % for a rail of 5 % and resistors of 1 %).
 *   <li>The worst case takes the load inside the synth as exact, because its tolerance is seldom known; a load that is 20 %
 *       lower takes away at most a quarter more than is computed.
 *   <li>A string input nobody measured is taken for 1 megohm, a rail of unknown tolerance for 5 %, a cable of unknown kind
 *       for 100 pF a metre (common practice, no source).
 *   <li>Beyond 32 combinations of switch positions only those with one switch moved are checked.
 * </ol>
 */
package rosinbook.circuit;
