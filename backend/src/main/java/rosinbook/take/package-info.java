/**
 * The take bench: what a bowed take holds, what went wrong in it, and what was played.
 *
 * <p><b>What.</b> A take is a Standard MIDI File made while playing through a synthesizer that listens to each string.
 * {@link rosinbook.take.TakeReader} reads it, {@link rosinbook.take.Cleaner} finds faults and mends them,
 * {@link rosinbook.take.Scores} compares with a truth as mir_eval's note transcription evaluation does (Raffel et al., ISMIR
 * 2014), {@link rosinbook.take.TakeReport} puts it all together, and {@link rosinbook.take.MidiExport},
 * {@link rosinbook.take.MusicXmlExport} and {@link rosinbook.take.CsvExport} write it out.
 *
 * <p><b>Conventions.</b> String 1 is the highest. Channels are 1 to 16. Times are seconds from the start of the file, with ticks
 * kept beside them. Pitches are MIDI numbers. A note that ends and one that starts at the same tick touch. Evidence is the
 * natural logarithm of odds; {@link rosinbook.take.Threshold} lists every figure. The original take is never altered; a repair
 * is refused by its fault's id.
 *
 * <p><b>Left out.</b> Programs, pressure and controllers, save pitch bend with its range. Audio. Meter: sheet music comes in 4/4.
 * Strings cannot be told apart when all notes share one channel, and then ghosts are not looked for.
 *
 * <p><b>Differences from the usual method.</b> (1) Faults are found by adding up evidence, not by fixed limits alone: the same gap
 * may be a split in one take and a bow change in another, going by the durations usual in that take. (2) Cleaning repeats until
 * nothing more is found, so that cleaning twice is cleaning once. (3) A joined note is as loud as its loudest part, since a part
 * after a split is measured on the swell. (4) Strings are kept apart in the first two scores, so a right note on the wrong string
 * is wrong.
 */
package rosinbook.take;
