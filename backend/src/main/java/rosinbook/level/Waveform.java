package rosinbook.level;

import java.util.ArrayList;
import java.util.List;

/**
 * A recording thinned out for drawing.
 *
 * @param secondsPerPoint what one point stands for
 * @param peaks per input, from 1, the largest amplitude around each point, 0 to 1 (a float file may go higher)
 * @param rms per input the rms amplitude around each point
 */
public record Waveform(double secondsPerPoint, List<List<Float>> peaks, List<List<Float>> rms) {
    static Waveform of(Envelope envelope, int maxPoints) {
        int slicesPerPoint = Math.max(1, (envelope.slices() + maxPoints - 1) / maxPoints);
        List<List<Float>> peaks = new ArrayList<>();
        List<List<Float>> rms = new ArrayList<>();
        for (int input = 0; input < envelope.inputs(); input++) {
            List<Float> inputPeaks = new ArrayList<>();
            List<Float> inputRms = new ArrayList<>();
            for (int from = 0; from < envelope.slices(); from += slicesPerPoint) {
                int to = Math.min(envelope.slices(), from + slicesPerPoint);
                inputPeaks.add(rounded(envelope.peak(input, from, to)));
                inputRms.add(rounded(Math.sqrt(envelope.power(input, from, to))));
            }
            peaks.add(List.copyOf(inputPeaks));
            rms.add(List.copyOf(inputRms));
        }
        return new Waveform(slicesPerPoint * envelope.sliceSeconds(), List.copyOf(peaks), List.copyOf(rms));
    }

    /** Five decimals draw a line finer than any screen. */
    private static float rounded(double amplitude) {
        return Math.round(amplitude * 1e5) / 1e5f;
    }
}
