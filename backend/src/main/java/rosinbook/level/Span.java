package rosinbook.level;

/**
 * A run of slices of an {@link Envelope}.
 *
 * @param from the first slice in it
 * @param to the first slice after it, above {@code from}
 */
record Span(int from, int to) {
    int length() {
        return to - from;
    }
}
