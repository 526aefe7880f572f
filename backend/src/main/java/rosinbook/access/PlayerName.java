package rosinbook.access;

import java.util.Locale;

/**
 * What a player is called, and signs in with.
 *
 * @param text 1 to 60 characters, none of them invisible, no space at either end
 */
public record PlayerName(String text) {
    /** Most characters of a name. */
    public static final int LONGEST = 60;

    /** @throws IllegalArgumentException naming what is wrong */
    public PlayerName {
        text = text == null ? "" : text.strip();
        if (text.isEmpty() || text.length() > LONGEST) {
            throw new IllegalArgumentException("name has " + text.length() + " characters; give 1 to " + LONGEST);
        }
        if (!text.codePoints().allMatch(PlayerName::isVisible)) {
            throw new IllegalArgumentException("name holds a character that cannot be seen; leave it out");
        }
    }

    private static boolean isVisible(int character) {
        return switch (Character.getType(character)) {
            case Character.CONTROL,
                    Character.FORMAT,
                    Character.SURROGATE,
                    Character.PRIVATE_USE,
                    Character.UNASSIGNED,
                    Character.LINE_SEPARATOR,
                    Character.PARAGRAPH_SEPARATOR -> false;
            default -> true;
        };
    }

    /** What two names have in common that are taken for the same. */
    public String lower() {
        return text.toLowerCase(Locale.ROOT);
    }

    @Override
    public String toString() {
        return text;
    }
}
