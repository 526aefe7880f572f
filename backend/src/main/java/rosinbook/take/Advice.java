package rosinbook.take;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;

/**
 * What a player might try next, going by the faults of a take. Common practice among players of such rigs, no source; a change
 * of settings is worth judging only by playing the same passage again.
 */
final class Advice {
    private static final int WORTH_SAYING = 3;
    private static final double MOSTLY = 0.6;
    private static final String AGAIN = " Then play the same passage again and compare.";

    private Advice() {}

    static List<String> of(Cleaning cleaning) {
        Take take = cleaning.take();
        int strings = take.tuning().strings();
        List<Map<FaultKind, Integer>> counts = new ArrayList<>();
        for (int string = 0; string <= strings; string++) {
            counts.add(new EnumMap<>(FaultKind.class));
        }
        int[][] sources = new int[strings + 1][strings + 1];
        for (Fault fault : cleaning.faults()) {
            counts.get(fault.string()).merge(fault.kind(), 1, Integer::sum);
            if (fault.kind() == FaultKind.GHOST && fault.notes().size() > 1) {
                int source = take.notes()
                        .get(fault.notes().get(fault.notes().size() - 1))
                        .string();
                sources[fault.string()][source]++;
            }
        }
        List<String> advice = new ArrayList<>();
        for (int string = 1; string <= strings; string++) {
            ghosts(string, counts.get(string).getOrDefault(FaultKind.GHOST, 0), sources[string], advice);
            own(string, counts.get(string), advice);
        }
        return advice;
    }

    private static void ghosts(int string, int ghosts, int[] sources, List<String> advice) {
        if (ghosts < WORTH_SAYING) {
            return;
        }
        int most = 1;
        for (int source = 2; source < sources.length; source++) {
            most = sources[source] > sources[most] ? source : most;
        }
        String follow = sources[most] >= MOSTLY * ghosts
                ? sources[most] + " of " + ghosts + " ghosts on string " + string + " follow notes on string " + most
                        + "."
                : ghosts + " ghosts on string " + string + " follow notes on several other strings.";
        advice.add(follow + " Lowering the sensitivity of string " + string + " by one or two steps may help." + AGAIN);
    }

    private static void own(int string, Map<FaultKind, Integer> counts, List<String> advice) {
        say(
                counts,
                FaultKind.SPLIT,
                advice,
                count -> count + " held notes on string " + string
                        + " were broken. Bowing a little more evenly, or one step less sensitivity, may hold them together.");
        say(
                counts,
                FaultKind.BLIP,
                advice,
                count -> "String " + string + " jumped to a harmonic " + count
                        + " times. Bowing a little further from the bridge, or checking the pickup's seat, may steady it.");
        say(
                counts,
                FaultKind.BELOW_OPEN,
                advice,
                count -> count + " notes below string " + string
                        + " cannot have been played. Noise or rumble may be setting it off: try one step less sensitivity.");
        say(
                counts,
                FaultKind.LATE,
                advice,
                count -> count + " notes on string " + string
                        + " answered late. If they were soft, one step more sensitivity may wake the string sooner.");
        say(
                counts,
                FaultKind.HANGING,
                advice,
                count -> count + " notes on string " + string
                        + " were never ended. A lost message is likely: check the cable and what else uses the line.");
    }

    private static void say(
            Map<FaultKind, Integer> counts, FaultKind kind, List<String> advice, IntFunction<String> sentence) {
        int count = counts.getOrDefault(kind, 0);
        if (count >= WORTH_SAYING) {
            advice.add(sentence.apply(count) + AGAIN);
        }
    }
}
