/**
 * Notes by number and by name.
 *
 * <p><b>What.</b> MIDI note numbers, scientific pitch names and equal-tempered frequencies (ISO 16: A4 = 440 Hz unless a
 * player tunes to something else).
 *
 * <p><b>Conventions.</b> Number 69 is A4, 60 is C4. Frequencies in Hz, intervals in cents (1200 to the octave).
 *
 * <p><b>Left out.</b> Other temperaments, and octave numbering in which 60 is C3 or C5.
 */
package rosinbook.pitch;
