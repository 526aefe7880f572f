package rosinbook.notebook;

import java.time.LocalDate;
import java.util.Collections;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** Checks shared by the content records. Every message begins with the field's name. */
final class Require {
    static final int TITLE_LENGTH = 200;
    static final int TEXT_LENGTH = Limit.TEXT_LENGTH.count();

    private Require() {}

    static <T> T present(String field, T given) {
        if (given == null) {
            throw new IllegalArgumentException(field + " is missing");
        }
        return given;
    }

    static String title(String field, String given) {
        if (given == null || given.isBlank()) {
            throw new IllegalArgumentException(field + " is empty; give it a name");
        }
        return limited(field, given.strip(), TITLE_LENGTH);
    }

    static String text(String field, String given) {
        return given == null ? "" : limited(field, given, TEXT_LENGTH);
    }

    static String limited(String field, String given, int length) {
        if (given.length() > length) {
            throw new PastLimit(
                    Limit.TEXT_LENGTH, field + " has " + given.length() + " characters; " + length + " is the most");
        }
        return given;
    }

    /** The number; 0 for −0, as canonical JSON has it, so that what is kept beside a content agrees with it. */
    static double finite(String field, Double given) {
        present(field, given);
        if (!Double.isFinite(given)) {
            throw new IllegalArgumentException(field + " is not a number");
        }
        return given + 0.0;
    }

    static double within(String field, Double given, double min, double max, String unit) {
        double number = finite(field, given);
        if (number < min || number > max) {
            throw new IllegalArgumentException(
                    field + " is " + plain(number) + "; give " + plain(min) + " to " + plain(max) + " " + unit);
        }
        return number;
    }

    /** A day that every database and every page can tell: of the years 1 to 9999. */
    static LocalDate day(String field, LocalDate given) {
        present(field, given);
        if (given.getYear() < 1 || given.getYear() > 9999) {
            throw new IllegalArgumentException(field + " is no day of the years 1 to 9999");
        }
        return given;
    }

    static <V> SortedMap<String, V> keyed(String field, Map<String, V> given, int most) {
        if (given == null) {
            return Collections.emptySortedMap();
        }
        if (given.size() > most) {
            throw new PastLimit(Limit.ENTRIES, field + " has " + given.size() + " entries; " + most + " is the most");
        }
        given.forEach((key, value) -> {
            if (!key.matches("[A-Za-z0-9][A-Za-z0-9_.-]{0,59}")) {
                throw new IllegalArgumentException(
                        field + " has a key that is not 1 to 60 letters, digits, '-', '_' or '.'");
            }
            present(field + "/" + key, value);
        });
        return Collections.unmodifiableSortedMap(new TreeMap<>(given));
    }

    /** Keyed by what is printed or written elsewhere, such as pin labels: one line of any characters. */
    static <V> SortedMap<String, V> labelled(String field, Map<String, V> given, int most, int length) {
        if (given == null) {
            return Collections.emptySortedMap();
        }
        if (given.size() > most) {
            throw new PastLimit(Limit.ENTRIES, field + " has " + given.size() + " entries; " + most + " is the most");
        }
        given.forEach((key, value) -> {
            if (key.isBlank()
                    || key.length() > length
                    || !key.equals(key.strip())
                    || key.chars().anyMatch(Character::isISOControl)) {
                throw new IllegalArgumentException(field + " has a key that is not one line of 1 to " + length
                        + " characters without blanks around");
            }
            present(field, value);
        });
        return Collections.unmodifiableSortedMap(new TreeMap<>(given));
    }

    private static String plain(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? Long.toString((long) number)
                : Double.toString(number);
    }
}
