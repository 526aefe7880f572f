package rosinbook.circuit;

/**
 * A series of preferred values.
 *
 * @see "IEC 60063, Preferred number series for resistors and capacitors"
 */
public enum Series {
    E6,
    E12,
    E24,
    E48,
    E96,
    E192
}
