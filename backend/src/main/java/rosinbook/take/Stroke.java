package rosinbook.take;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rosinbook.pitch.Note;

/** A note while it is being mended; a link in the chain of its string. Not safe for use by several threads. */
final class Stroke {
    final int id;
    final int string;
    final List<Integer> from = new ArrayList<>(1);
    private final TakeNote origin;

    int pitch;
    int velocity;
    int loudest;
    double on;
    double off;
    long onTick;
    long offTick;
    boolean acrossBlip;
    Glide glide;
    Stroke previous;
    Stroke next;

    Stroke(TakeNote origin) {
        this.origin = origin;
        id = origin.id();
        string = origin.string();
        pitch = (int) Math.round(origin.pitch());
        velocity = origin.velocity();
        loudest = origin.velocity();
        on = origin.onSeconds();
        off = origin.offSeconds();
        onTick = origin.onTick();
        offTick = origin.offTick();
        from.add(id);
    }

    /**
     * From one moment to another, without the last digits that adding up tempo leaves: so that times that are equal in the file
     * are equal here, whatever the tempo map.
     */
    static double between(double from, double to) {
        return Math.rint((to - from) * 1e8) / 1e8;
    }

    double seconds() {
        return between(on, off);
    }

    /** Seconds of silence between this and the next; below 0 if they overlap. */
    double gapTo(Stroke later) {
        return between(off, later.on);
    }

    /** Lasts until another ends, if that is later. */
    void endAt(Stroke other) {
        if (other.off > off) {
            off = other.off;
            offTick = other.offTick;
        }
    }

    void endWhereStarts(Stroke other) {
        off = other.on;
        offTick = other.onTick;
    }

    void startAt(Stroke other) {
        on = other.on;
        onTick = other.onTick;
    }

    /** Takes over another's loudness, origin and glide, and unlinks it. */
    void swallow(Stroke other) {
        glide = other.glide == null ? glide : other.glide;
        loudest = Math.max(loudest, other.loudest);
        from.addAll(other.from);
        other.unlink();
    }

    void unlink() {
        if (previous != null) {
            previous.next = next;
        }
        if (next != null) {
            next.previous = previous;
        }
    }

    /** The note number; the pitch without bend. */
    int key() {
        return origin.note().midi() + pitch - (int) Math.round(origin.pitch());
    }

    CleanNote toNote() {
        TakeNote note = new TakeNote(
                id,
                string,
                origin.channel(),
                new Note(key()),
                origin.bendCents(),
                loudest,
                onTick,
                offTick,
                on,
                off,
                false);
        from.sort(null);
        return new CleanNote(note, from, Optional.ofNullable(glide));
    }
}
