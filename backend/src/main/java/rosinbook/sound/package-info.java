/**
 * Times that follow a piece's tempo.
 *
 * <p><b>What.</b> Note values (plain, dotted, triplet) turned into milliseconds: 60000 / bpm × quarter notes.
 *
 * <p><b>Conventions.</b> A tempo counts quarter notes a minute; in 6/8 felt in dotted quarters, give one and a half
 * times the felt tempo. A dotted note lasts 3/2, a triplet note 2/3 of the plain one.
 *
 * <p><b>Left out.</b> Swing, tempo changes within a piece.
 */
package rosinbook.sound;
