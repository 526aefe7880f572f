package rosinbook.level;

import java.util.List;
import java.util.Optional;

/**
 * The synth's own scale for sensitivity. One step up lets it hear a string louder by so many decibels; on a scale that runs
 * the other way that figure is negative.
 *
 * @param lowest the lowest setting
 * @param highest the highest setting, above the lowest
 * @param step from one setting to the next, above 0
 * @param decibelsPerStep not 0
 * @param customaryStart where players of this synth begin, within the scale
 * @param fit the line through the readings from which the decibels per step were taken; empty if they are assumed
 */
public record SensitivityScale(
        double lowest,
        double highest,
        double step,
        double decibelsPerStep,
        double customaryStart,
        Optional<LineFit> fit) {
    /** @throws IllegalArgumentException naming what is out of range */
    public SensitivityScale {
        if (!(Double.isFinite(lowest) && Double.isFinite(highest) && lowest < highest)) {
            throw new IllegalArgumentException(
                    "a scale from " + lowest + " to " + highest + "; the lowest must lie below the highest");
        }
        if (!(step > 0 && step <= highest - lowest)) {
            throw new IllegalArgumentException(
                    "a scale with steps of " + step + "; give a step above 0, no wider than the scale");
        }
        if (!Double.isFinite(decibelsPerStep) || decibelsPerStep == 0) {
            throw new IllegalArgumentException(
                    "a step of " + decibelsPerStep + " dB; it must change the level, or nothing can be advised");
        }
        if (!(customaryStart >= lowest && customaryStart <= highest)) {
            throw new IllegalArgumentException(
                    "the customary start " + customaryStart + " lies outside the scale, " + lowest + " to " + highest);
        }
    }

    /** A scale whose decibels per step nobody measured. */
    public static SensitivityScale assumed(
            double lowest, double highest, double step, double decibelsPerStep, double customaryStart) {
        return new SensitivityScale(lowest, highest, step, decibelsPerStep, customaryStart, Optional.empty());
    }

    /**
     * A scale measured by the same stroke, or the same test tone, at two or more settings.
     *
     * @param readings x the setting, y the level in dB that the synth then shows
     * @throws IllegalArgumentException if all readings are at one setting or show no change
     */
    public static SensitivityScale measured(
            double lowest, double highest, double step, List<LineFit.Point> readings, double customaryStart) {
        LineFit fit = LineFit.of(readings);
        return new SensitivityScale(lowest, highest, step, fit.slope() * step, customaryStart, Optional.of(fit));
    }

    /** Whether the decibels per step are a guess. */
    public boolean isAssumed() {
        return fit.isEmpty();
    }

    /** How much louder a string is heard at this setting than at the customary start, in dB. */
    public double gainDb(double setting) {
        return (setting - customaryStart) / step * decibelsPerStep;
    }

    /** The setting on the scale that comes closest to this gain against the customary start. */
    public double settingFor(double gainDb) {
        double setting = customaryStart + gainDb / decibelsPerStep * step;
        double onGrid = lowest + Math.round((setting - lowest) / step) * step;
        double last = lowest + Math.floor((highest - lowest) / step + 1e-9) * step;
        return Math.max(lowest, Math.min(last, onGrid));
    }
}
