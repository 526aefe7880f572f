package rosinbook.circuit;

/**
 * What a pin seems to carry.
 *
 * @param role the likeliest
 * @param confidence 0 (a guess) to 1 (certain); our own scale for ranking, no probability
 * @param reason in words, with the readings that say so
 * @param settle the reading that would make it surer; empty when none is needed
 */
public record PinGuess(PinRole role, double confidence, String reason, String settle) {
    PinGuess doubted(double share) {
        return new PinGuess(role, confidence * share, reason, settle);
    }
}
