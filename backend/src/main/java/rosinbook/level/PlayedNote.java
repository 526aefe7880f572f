package rosinbook.level;

/**
 * One note that a synth made of a string, as a stand-in for its level.
 *
 * @param string the string it came out on, 1 = highest
 * @param velocity 1 to 127
 * @param isGhost whether nobody bowed that string
 */
public record PlayedNote(int string, int velocity, boolean isGhost) {
    /** @throws IllegalArgumentException if the string or the velocity is out of range */
    public PlayedNote {
        if (string < 1 || string > WavFormat.MAX_CHANNELS) {
            throw new IllegalArgumentException("a note on string " + string + "; give 1 to " + WavFormat.MAX_CHANNELS);
        }
        if (velocity < 1 || velocity > 127) {
            throw new IllegalArgumentException("a note with velocity " + velocity + "; give 1 to 127");
        }
    }

    /**
     * 40·log10(velocity ÷ 127), the law General MIDI level 2 recommends; what the synth at hand does may differ.
     *
     * @return dB, 0 at the most
     */
    public double decibels() {
        return 40 * Math.log10(velocity / 127.0);
    }
}
