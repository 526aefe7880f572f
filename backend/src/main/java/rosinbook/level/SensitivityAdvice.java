package rosinbook.level;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * Which sensitivity to try on one string.
 *
 * @param string 1 = highest
 * @param setting on the synth's own scale
 * @param change against the customary start
 * @param catchMarginDb how far the softest own stroke lies above the trigger; negative: it will be missed
 * @param ignoreMarginDb how far the loudest leak lies below it; negative: it will trigger
 * @param headroomDb from the loudest peak, heard at this setting, to clipping; null if no peak is known
 * @param isAssumed whether the decibels per step, or where the synth triggers, are assumed and not measured
 * @param isAtEnd whether the scale ends before the best setting
 * @param sentence the advice in words
 */
public record SensitivityAdvice(
        int string,
        double setting,
        double change,
        double catchMarginDb,
        double ignoreMarginDb,
        Double headroomDb,
        boolean isAssumed,
        boolean isAtEnd,
        String sentence) {
    /**
     * Puts the trigger in the middle of each string's window.
     *
     * @param thresholdAtStartDb the level that just triggers at the customary start, if it was measured; otherwise the
     *     customary start is assumed to suit the middle one of the strings
     * @param peakDbByString loudest own peak per string, from 1, as far as known
     */
    public static List<SensitivityAdvice> of(
            List<TriggerWindow> windows,
            SensitivityScale scale,
            OptionalDouble thresholdAtStartDb,
            Map<Integer, Double> peakDbByString) {
        double threshold = thresholdAtStartDb.orElseGet(() -> medianMiddle(windows));
        boolean isAssumed = scale.isAssumed() || thresholdAtStartDb.isEmpty();
        List<SensitivityAdvice> advice = new ArrayList<>();
        for (TriggerWindow window : windows) {
            advice.add(advise(window, scale, threshold, isAssumed, peakDbByString.get(window.string())));
        }
        return List.copyOf(advice);
    }

    private static SensitivityAdvice advise(
            TriggerWindow window, SensitivityScale scale, double threshold, boolean isAssumed, Double peakDb) {
        double wantedGain = threshold - window.middleDbfs();
        double setting = scale.settingFor(wantedGain);
        double gain = scale.gainDb(setting);
        double heardThreshold = threshold - gain;
        double catchMargin = window.softestStrokeDbfs() - heardThreshold;
        double ignoreMargin = heardThreshold - window.loudestLeakDbfs();
        boolean isAtEnd = Math.abs(wantedGain - gain) > Math.abs(scale.decibelsPerStep()) / 2 + 1e-9;
        Double headroom = peakDb == null ? null : -peakDb - gain;
        String sentence = sentence(window, scale, setting, catchMargin, ignoreMargin, isAssumed, isAtEnd, headroom);
        return new SensitivityAdvice(
                window.string(),
                setting,
                setting - scale.customaryStart(),
                catchMargin,
                ignoreMargin,
                headroom,
                isAssumed,
                isAtEnd,
                sentence);
    }

    private static String sentence(
            TriggerWindow window,
            SensitivityScale scale,
            double setting,
            double catchMargin,
            double ignoreMargin,
            boolean isAssumed,
            boolean isAtEnd,
            Double headroom) {
        StringBuilder sentence = new StringBuilder(Words.say(
                "String %d: set %s (usual start %s). Soft strokes then lie %.1f dB above the trigger, the worst leak %.1f dB below it.",
                window.string(),
                Words.number(setting),
                Words.number(scale.customaryStart()),
                catchMargin,
                ignoreMargin));
        if (!window.isOpen()) {
            sentence.append(" This is a compromise: the string has no window.");
        }
        if (isAtEnd) {
            sentence.append(" The scale ends here; change the trim or the route as well.");
        }
        if (headroom != null && headroom < 1) {
            sentence.append(Words.say(" Loud strokes come within %.1f dB of clipping; lower the trim.", headroom));
        }
        if (isAssumed) {
            sentence.append(" Partly assumed, not measured: try it and listen.");
        }
        return sentence.toString();
    }

    private static double medianMiddle(List<TriggerWindow> windows) {
        double[] middles =
                windows.stream().mapToDouble(TriggerWindow::middleDbfs).sorted().toArray();
        int half = middles.length / 2;
        if (middles.length == 0) {
            return 0;
        }
        return middles.length % 2 == 1 ? middles[half] : (middles[half - 1] + middles[half]) / 2;
    }
}
