package rosinbook.level;

/**
 * One input over the whole recording.
 *
 * @param mean the constant offset, as a fraction of full scale
 * @param meanSquare the power with the offset in it
 * @param peak the largest amplitude
 * @param clippedSamples how many samples reached full scale
 */
record InputTotals(double mean, double meanSquare, double peak, long clippedSamples) {}
