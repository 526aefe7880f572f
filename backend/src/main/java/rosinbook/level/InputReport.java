package rosinbook.level;

/**
 * One input in figures. Levels in dBFS, rms unless they say peak; see {@link LevelUnit#DBFS}.
 *
 * @param input from 1
 * @param noiseDbfs the noise floor, from the quiet parts, without the constant offset
 * @param humDbfs all mains harmonics that stand out, or what could hide in the noise if none does; null if no quiet part is
 *     long enough
 * @param humStandsOut whether any does
 * @param strongestHumHertz the strongest of them; null if none stands out
 * @param peakDbfs the largest amplitude of all
 * @param rmsDbfs all of the recording, offset and pauses included
 * @param rmsAes17Dbfs the same by AES17, 3.01 higher
 * @param crestDb peak less rms
 * @param signalToNoiseDb the string's loudest strokes against the noise; null if it was not bowed
 * @param clippedSamples how many samples reached full scale
 * @param dcOffset the constant offset as a fraction of full scale
 * @param tiltDbPerOctave how fast the string's spectrum falls (negative) from its fundamental up; null if unknown
 */
public record InputReport(
        int input,
        double noiseDbfs,
        Double humDbfs,
        boolean humStandsOut,
        Double strongestHumHertz,
        double peakDbfs,
        double rmsDbfs,
        double rmsAes17Dbfs,
        double crestDb,
        Double signalToNoiseDb,
        long clippedSamples,
        double dcOffset,
        Double tiltDbPerOctave) {}
