package rosinbook.level;

/**
 * One stroke in an {@link Envelope}, before anyone has said which string and how loud.
 *
 * @param span all of it
 * @param steady the part to measure: after the attack, before the bow leaves the string
 * @param input the input on which it stands out most
 */
record Stroke(Span span, Span steady, int input) {
    private static final double ATTACK_SECONDS = 0.15;
    private static final double RELEASE_SECONDS = 0.07;

    static Stroke of(Envelope envelope, Span span, int input) {
        return new Stroke(span, steadyPart(envelope, span), input);
    }

    /**
     * Leaves out 0.15 s of attack (slow bowed attacks take 50 to 90 ms, Guettler and Askenfelt 1997, from memory) and 0.07 s
     * of release, but never more than 3/10 and 3/20 of the stroke.
     */
    static Span steadyPart(Envelope envelope, Span span) {
        double seconds = span.length() * envelope.sliceSeconds();
        int from = span.from() + (int) Math.round(Math.min(ATTACK_SECONDS, 0.3 * seconds) / envelope.sliceSeconds());
        int to = span.to() - (int) Math.round(Math.min(RELEASE_SECONDS, 0.15 * seconds) / envelope.sliceSeconds());
        return from < to ? new Span(from, to) : span;
    }
}
