package rosinbook.level;

import com.fasterxml.jackson.annotation.JsonValue;

/** What 0 dB is among a set of levels. */
public enum LevelUnit {
    /** Measured in a recording: rms, 0 is a full-scale square wave, so that a full-scale sine reads −3.01. */
    DBFS("dBFS, rms; a full-scale square wave reads 0, a full-scale sine -3.01 (AES17 figures are 3.01 higher)"),
    /** Read off a meter: decibels of that meter. */
    METER_DB("dB as the meter reads them"),
    /** From velocities, by an assumed law. */
    VELOCITY_DB("dB from MIDI velocity, 40 log10(velocity/127), a customary law that the synth need not follow");

    private final String meaning;

    LevelUnit(String meaning) {
        this.meaning = meaning;
    }

    @JsonValue
    @Override
    public String toString() {
        return meaning;
    }
}
