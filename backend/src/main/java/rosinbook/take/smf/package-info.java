/**
 * Standard MIDI Files, read and written.
 *
 * <p><b>What.</b> Formats 0, 1 and 2, metrical and SMPTE division, running status, tempo maps, system exclusive and meta
 * events, after "Standard MIDI Files 1.0" (MIDI Manufacturers Association).
 *
 * <p><b>Conventions.</b> Times are ticks from the start of the file; {@link rosinbook.take.smf.TempoMap} turns them into
 * seconds. Channels are 0 to 15 here, as on the wire. A problem in a file is a
 * {@link rosinbook.take.smf.MidiFormatException} that names the byte offset, what stood there and what was expected.
 *
 * <p><b>Left out.</b> The meaning of system exclusive data; RIFF wrappers; real-time messages, which a file may not hold.
 *
 * <p><b>Differences from the letter of the standard.</b> (1) Chunks of an unknown kind are skipped, and a header longer than
 * six bytes is accepted, as the standard asks of readers. (2) Bytes after End of Track within a chunk, and a track without End
 * of Track, are tolerated. (3) Bytes after the last chunk that are too few for another one are tolerated.
 */
package rosinbook.take.smf;
