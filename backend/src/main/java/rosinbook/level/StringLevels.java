package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.stream.Stream;

/**
 * One string of a {@link LevelSummary}. All in dB (see {@link LevelUnit} for the zero); absent where it is not known.
 *
 * @param noiseDb noise of its input
 * @param humDb hum of its input, or what could hide in the noise
 * @param softDb its soft strokes on its own input
 * @param mediumDb its medium strokes
 * @param loudDb its loud strokes
 * @param peakDb its loudest peak
 * @param signalToNoiseDb loudest strokes less noise
 * @param tiltDbPerOctave how its spectrum falls
 * @param softestStrokeDb the softest thing its trigger must catch
 * @param loudestLeakDb the loudest thing it must ignore
 * @param leakFromString where that comes from; 0 for noise
 * @param windowLowDb lowest threshold with the margin kept
 * @param windowHighDb highest threshold with the margin kept; below {@code windowLowDb} if there is no window
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record StringLevels(
        Double noiseDb,
        Double humDb,
        Double softDb,
        Double mediumDb,
        Double loudDb,
        Double peakDb,
        Double signalToNoiseDb,
        Double tiltDbPerOctave,
        Double softestStrokeDb,
        Double loudestLeakDb,
        Integer leakFromString,
        Double windowLowDb,
        Double windowHighDb) {
    /** @throws IllegalArgumentException if a figure is not finite, or beyond ±1000 dB */
    public StringLevels {
        Stream.of(
                        noiseDb,
                        humDb,
                        softDb,
                        mediumDb,
                        loudDb,
                        peakDb,
                        signalToNoiseDb,
                        tiltDbPerOctave,
                        softestStrokeDb,
                        loudestLeakDb,
                        windowLowDb,
                        windowHighDb)
                .filter(figure -> figure != null && !(Math.abs(figure) <= LevelSummary.MOST_DB))
                .findFirst()
                .ifPresent(figure -> {
                    throw new IllegalArgumentException("a level of " + figure + " dB is none a string can have");
                });
        if (leakFromString != null && (leakFromString < 0 || leakFromString > WavFormat.MAX_CHANNELS)) {
            throw new IllegalArgumentException(
                    "leakFromString is " + leakFromString + "; give 0 (noise) to " + WavFormat.MAX_CHANNELS);
        }
    }

    /** Its strokes of one loudness; null if not known. */
    public Double own(Loudness loudness) {
        return switch (loudness) {
            case SOFT -> softDb;
            case MEDIUM -> mediumDb;
            case LOUD -> loudDb;
        };
    }

    /** How wide its trigger window is; 0 or less if there is none; null if not known. */
    public Double windowDb() {
        return windowLowDb == null || windowHighDb == null ? null : Double.valueOf(windowHighDb - windowLowDb);
    }
}
