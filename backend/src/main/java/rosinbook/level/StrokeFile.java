package rosinbook.level;

/**
 * A mono file in which one string is bowed at one loudness.
 *
 * @param string 1 = highest
 * @param loudness how loud
 * @param recording mono
 */
public record StrokeFile(int string, Loudness loudness, WavRecording recording) {
    /** @throws IllegalArgumentException if the string is out of range or the file not mono */
    public StrokeFile {
        if (string < 1 || string > WavFormat.MAX_CHANNELS) {
            throw new IllegalArgumentException("a file for string " + string + "; give 1 to " + WavFormat.MAX_CHANNELS);
        }
        if (loudness == null) {
            throw new IllegalArgumentException("a file for string " + string + " lacks soft, medium or loud");
        }
        if (recording.inputs() != 1) {
            throw new IllegalArgumentException("'" + recording.name() + "' has " + recording.inputs()
                    + " channels; a file for one string and loudness is mono");
        }
    }
}
