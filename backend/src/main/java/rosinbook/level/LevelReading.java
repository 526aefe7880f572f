package rosinbook.level;

/**
 * How loud one input is while one string is bowed.
 *
 * @param string the string bowed, 1 = highest
 * @param loudness how loud it was bowed
 * @param input the input listened to, from 1
 * @param decibels finite; against what, {@link Levels} says
 */
public record LevelReading(int string, Loudness loudness, int input, double decibels) {
    /** @throws IllegalArgumentException naming what is out of range or missing */
    public LevelReading {
        if (string < 1 || input < 1) {
            throw new IllegalArgumentException(
                    "a reading for string " + string + " on input " + input + "; strings and inputs count from 1");
        }
        if (loudness == null) {
            throw new IllegalArgumentException("a reading for string " + string + " lacks soft, medium or loud");
        }
        if (!Double.isFinite(decibels)) {
            throw new IllegalArgumentException("the reading for string " + string + " on input " + input + " is "
                    + decibels + "; give a finite number");
        }
    }
}
