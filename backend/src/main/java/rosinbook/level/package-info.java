/**
 * The level bench: how loud every string is on every input, and which sensitivity follows.
 *
 * <p><b>What.</b> {@link rosinbook.level.LevelBench} measures a recording in which each open string is bowed soft, medium
 * and loud, or works from readings of a meter or the notes a synth played. It gives levels, noise, hum, the crosstalk
 * matrix, trigger windows ({@link rosinbook.level.TriggerWindow}), advice on sensitivities
 * ({@link rosinbook.level.SensitivityAdvice}), comparisons ({@link rosinbook.level.LevelComparison}) and the least delay of
 * pitch detection ({@link rosinbook.level.StringRange}). Recordings are read in a stream; memory does not grow with them.
 *
 * <p><b>Conventions.</b> String 1 is the highest. Strings and inputs count from 1 in everything public, from 0 inside.
 * Samples are {@code float[channel][frame]}, ±1 at full scale. Levels are plain rms in dBFS: a full-scale square wave reads
 * 0, a full-scale sine −3.01 (AES17 would read 3.01 more and is given beside it where it matters). A constant offset is
 * left out of every level but an input's overall rms. Noise is what the quiet parts hold, hum included. Crosstalk has a row
 * per string bowed and a column per input heard, in dB against the string's own input, 0 there, null if not measured. No
 * level reads below the rounding of the file's format.
 *
 * <p><b>Left out.</b> Weighting curves; crosstalk by frequency; phase; strings bowed together; pauses between loudnesses
 * are needed, since a swell cannot be told from three strokes. Compressed files.
 *
 * <p><b>Differences from the usual method.</b>
 *
 * <ol>
 *   <li>Crosstalk is usually measured with the other inputs terminated; here they keep their strings, whose ringing along
 *       belongs to the leak.
 *   <li>Noise power is taken off leak and signal alike (up to 1.3 dB at a leak 6 dB above the noise).
 *   <li>A stroke is measured from 0.15 s after its start to 0.07 s before its end, so the scratch of the attack, which can
 *       be louder on far inputs, is not in it.
 *   <li>Hum is summed only over harmonics that clearly stand out of the noise beside them, so faint ones are missed rather than invented.
 * </ol>
 */
package rosinbook.level;
