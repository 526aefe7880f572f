package rosinbook.take;

import java.util.ArrayList;
import java.util.List;

/** The notes of one string in order of time, as a chain. Not safe for use by several threads. */
final class StringLine {
    final int string;
    private Stroke first;

    private Stroke last;

    StringLine(int string) {
        this.string = string;
    }

    void append(Stroke stroke) {
        if (first == null) {
            first = stroke;
        } else {
            last.next = stroke;
            stroke.previous = last;
        }
        last = stroke;
    }

    /** Null if the string is empty. */
    Stroke first() {
        return first;
    }

    void remove(Stroke stroke) {
        if (stroke == first) {
            first = stroke.next;
        }
        if (stroke == last) {
            last = stroke.previous;
        }
        stroke.unlink();
    }

    /** Lets one note take over another of the same string, with its loudness and origin. */
    void swallow(Stroke keeper, Stroke other) {
        if (other == first) {
            first = other.next;
        }
        if (other == last) {
            last = other.previous;
        }
        keeper.swallow(other);
    }

    List<Stroke> toList() {
        List<Stroke> strokes = new ArrayList<>();
        for (Stroke stroke = first; stroke != null; stroke = stroke.next) {
            strokes.add(stroke);
        }
        return strokes;
    }
}
