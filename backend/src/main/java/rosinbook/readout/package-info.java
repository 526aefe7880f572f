/**
 * Changes in a player's words.
 *
 * <p><b>What.</b> Turns the differences between two contents into lines such as "String 1, sensitivity: 20 → 22 (+2)",
 * shows a resolved recipe value by value with where each comes from, and compares one set with another.
 *
 * <p><b>Conventions.</b> Units come from the field's name ({@code trimDecibels}) or from the synth's own vocabulary. The
 * order numbers of voices, effects and items are never shown; what moved is. Whatever the vocabulary does not know is
 * shown under its own key.
 *
 * <p><b>Left out.</b> Other languages than English.
 */
package rosinbook.readout;
