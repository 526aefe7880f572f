package rosinbook.take;

import rosinbook.pitch.Note;

/**
 * One note as the file has it.
 *
 * @param id its place in the take, 0 first
 * @param string 1 = highest
 * @param channel 1 to 16
 * @param note its number and name
 * @param bendCents pitch bend in force when it starts, cents
 * @param velocity 1 to 127
 * @param onTick start, ticks
 * @param offTick end, ticks, not before the start
 * @param onSeconds start, seconds from the start of the file
 * @param offSeconds end, seconds, not before the start
 * @param hanging whether the file never ends it
 */
public record TakeNote(
        int id,
        int string,
        int channel,
        Note note,
        double bendCents,
        int velocity,
        long onTick,
        long offTick,
        double onSeconds,
        double offSeconds,
        boolean hanging) {
    /** @throws IllegalArgumentException if a figure is out of range or the note ends before it starts */
    public TakeNote {
        if (string < 1 || channel < 1 || channel > 16 || velocity < 1 || velocity > 127) {
            throw new IllegalArgumentException(
                    "string " + string + ", channel " + channel + ", velocity " + velocity + ": out of range");
        }
        if (onTick < 0 || offTick < onTick || !(onSeconds >= 0) || !(offSeconds >= onSeconds)) {
            throw new IllegalArgumentException("note " + id + " ends before it starts, or starts before 0");
        }
        if (!Double.isFinite(offSeconds) || !Double.isFinite(bendCents)) {
            throw new IllegalArgumentException("note " + id + " has a time or bend that is not a number");
        }
    }

    /** How long it lasts. */
    public double seconds() {
        return offSeconds - onSeconds;
    }

    /** The pitch it starts with, in semitones as MIDI numbers them, bend included. */
    public double pitch() {
        return note.midi() + bendCents / 100;
    }

    TakeNote withId(int newId) {
        return new TakeNote(
                newId, string, channel, note, bendCents, velocity, onTick, offTick, onSeconds, offSeconds, hanging);
    }
}
