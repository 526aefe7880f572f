package rosinbook.store;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Base64;
import java.util.UUID;

/**
 * Where a list goes on.
 *
 * @param key sort key of the last entry shown
 * @param id of the last entry shown
 */
record Cursor(String key, UUID id) {
    /** @throws IllegalArgumentException if the text is no cursor of ours */
    static Cursor parse(String text) {
        try {
            String plain = new String(Base64.getUrlDecoder().decode(text), StandardCharsets.UTF_8);
            int end = plain.indexOf(' ');
            if (plain.indexOf('\0') >= 0) {
                throw unknown();
            }
            return new Cursor(plain.substring(end + 1), UUID.fromString(plain.substring(0, Math.max(end, 0))));
        } catch (IllegalArgumentException problem) {
            throw unknown();
        }
    }

    /** @throws IllegalArgumentException if the key is no day that stands in our lists: of the years 1 to 9999 */
    LocalDate day() {
        try {
            LocalDate day = LocalDate.parse(key);
            if (day.getYear() < 1 || day.getYear() > 9999) {
                throw unknown();
            }
            return day;
        } catch (DateTimeException problem) {
            throw unknown();
        }
    }

    private static IllegalArgumentException unknown() {
        return new IllegalArgumentException(
                "after is no place in this list; take it from \"next\" of an earlier answer");
    }

    @Override
    public String toString() {
        byte[] plain = (id + " " + key).getBytes(StandardCharsets.UTF_8);
        return Base64.getUrlEncoder().withoutPadding().encodeToString(plain);
    }
}
