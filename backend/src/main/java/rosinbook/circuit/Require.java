package rosinbook.circuit;

import java.util.Collections;
import java.util.Comparator;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.pitch.Note;

/** The checks that this package's records share; every message starts with the field's name and a space. */
final class Require {
    private static final Comparator<String> COUNTED =
            Comparator.comparingInt(Require::count).thenComparing(Comparator.naturalOrder());

    private Require() {}

    /** The number a label is, or the highest for a word; looked at digit by digit, because every look-up sorts by it. */
    private static int count(String label) {
        if (label.isEmpty() || label.length() > 9) {
            return Integer.MAX_VALUE;
        }
        int count = 0;
        for (int i = 0; i < label.length(); i++) {
            int digit = label.charAt(i) - '0';
            if (digit < 0 || digit > 9) {
                return Integer.MAX_VALUE;
            }
            count = 10 * count + digit;
        }
        return count;
    }

    static double within(String field, double number, double min, double max, String unit) {
        if (!(number >= min && number <= max)) {
            throw new IllegalArgumentException(field + " is " + Figures.plain(number) + "; give " + unit + " from "
                    + Figures.plain(min) + " to " + Figures.plain(max));
        }
        return number;
    }

    static double ohms(String field, double ohms) {
        if (!(ohms > 0 && ohms <= 1e12)) {
            throw new IllegalArgumentException(
                    field + " is " + Figures.plain(ohms) + "; give ohms above 0 and at most 1e12 (4.7 kΩ is 4700)");
        }
        return ohms;
    }

    /** A text of one line: blank ends cut off, control characters refused. */
    static String line(String field, String text, int min, int max) {
        String line = text == null ? "" : text.strip();
        if (line.length() < min || line.length() > max) {
            String message = field + " has " + line.length() + " characters; give " + min + " to " + max;
            throw line.length() > max
                    ? new PastLimit(Limit.TEXT_LENGTH, message)
                    : new IllegalArgumentException(message);
        }
        if (line.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException(field + " holds a control character; write it as one line of text");
        }
        return line;
    }

    static <T> T present(String field, T thing, String remedy) {
        if (thing == null) {
            throw new IllegalArgumentException(field + " is missing; " + remedy);
        }
        return thing;
    }

    /** An unmodifiable copy sorted by key, whole numbers by size and before words: 1, 2, 10, shell. */
    static <T> SortedMap<String, T> keyed(String field, Map<String, T> things, int min, int max, int keyLength) {
        Map<String, T> given = things == null ? Map.of() : things;
        if (given.size() < min || given.size() > max) {
            String message = field + " has " + given.size() + " entries; give " + min + " to " + max;
            throw given.size() > max ? new PastLimit(Limit.ENTRIES, message) : new IllegalArgumentException(message);
        }
        SortedMap<String, T> sorted = new TreeMap<>(COUNTED);
        given.forEach((key, thing) -> {
            if (key == null || !key.equals(line(field, key, 1, keyLength))) {
                throw new IllegalArgumentException(
                        field + " has a name that is empty or has blanks around it; trim it");
            }
            sorted.put(key, present(field, thing, "the entry '" + key + "' holds nothing"));
        });
        return Collections.unmodifiableSortedMap(sorted);
    }

    /** An unmodifiable copy of notes by number (1 to 12), sorted. */
    static SortedMap<Integer, Note> numbered(String field, Map<Integer, Note> notes) {
        SortedMap<Integer, Note> sorted = new TreeMap<>();
        (notes == null ? Map.<Integer, Note>of() : notes).forEach((number, note) -> {
            if (number == null || number < 1 || number > 12) {
                throw new IllegalArgumentException(field + " has number " + number + "; count from 1 to at most 12");
            }
            sorted.put(number, present(field, note, "number " + number + " has no note"));
        });
        return Collections.unmodifiableSortedMap(sorted);
    }
}
