package rosinbook.level;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Says which string every stroke is on. As a rule it is the one whose input hears it loudest. Where a leak is as loud as the
 * string itself, strokes of two pitches would end up on one input; then pitches are dealt out to inputs, one each, so that
 * the levels add up to the most.
 */
final class StringFinder {
    private static final double ONE_PITCH_CENTS = 150;
    private static final double CLEAR = 0.8;
    private static final double MOVE_AT_MOST_DB = 12;

    private final List<Integer> inputs;
    private final List<double[]> decibels;

    private StringFinder(List<Integer> inputs, List<double[]> decibels) {
        this.inputs = inputs;
        this.decibels = decibels;
    }

    /**
     * @param decibels per stroke the level of every input
     * @param pitches per stroke
     * @param inputs the inputs, from 0, that have a string
     * @return per stroke the index into {@code inputs}
     */
    static int[] owners(List<double[]> decibels, List<Pitch> pitches, List<Integer> inputs) {
        StringFinder finder = new StringFinder(inputs, decibels);
        int[] owners = IntStream.range(0, decibels.size())
                .map(stroke -> finder.loudest(List.of(stroke)))
                .toArray();
        List<List<Integer>> groups = groups(pitches);
        int[] ofGroup = groups.stream().mapToInt(finder::loudest).toArray();
        if (groups.size() > inputs.size()) {
            return owners;
        }
        if (Arrays.stream(ofGroup).distinct().count() < groups.size()) {
            int[] dealt = finder.dealOut(groups);
            if (!finder.isPlausible(groups, ofGroup, dealt)) {
                return owners;
            }
            ofGroup = dealt;
        }
        for (int group = 0; group < groups.size(); group++) {
            for (int stroke : groups.get(group)) {
                owners[stroke] = ofGroup[group];
            }
        }
        return owners;
    }

    private static List<List<Integer>> groups(List<Pitch> pitches) {
        List<Integer> clear = IntStream.range(0, pitches.size())
                .filter(stroke -> pitches.get(stroke).clarity() >= CLEAR)
                .boxed()
                .sorted(Comparator.comparingDouble(stroke -> pitches.get(stroke).hertz()))
                .toList();
        List<List<Integer>> groups = new ArrayList<>();
        double last = 0;
        for (int stroke : clear) {
            double hertz = pitches.get(stroke).hertz();
            if (groups.isEmpty() || hertz > last * Math.pow(2, ONE_PITCH_CENTS / 1200)) {
                groups.add(new ArrayList<>());
            }
            groups.get(groups.size() - 1).add(stroke);
            last = hertz;
        }
        return groups;
    }

    private double level(List<Integer> strokes, int owner) {
        return strokes.stream()
                .mapToDouble(stroke -> decibels.get(stroke)[inputs.get(owner)])
                .average()
                .orElseThrow();
    }

    private int loudest(List<Integer> strokes) {
        return IntStream.range(0, inputs.size())
                .boxed()
                .max(Comparator.comparingDouble(owner -> level(strokes, owner)))
                .orElseThrow();
    }

    private boolean isPlausible(List<List<Integer>> groups, int[] loudest, int[] dealt) {
        return IntStream.range(0, groups.size())
                .allMatch(g -> level(groups.get(g), loudest[g]) - level(groups.get(g), dealt[g]) <= MOVE_AT_MOST_DB);
    }

    /** Goes through all ways to give each group an input of its own, keeping the best for each set of inputs used. */
    private int[] dealOut(List<List<Integer>> groups) {
        Map<Integer, Deal> best = new HashMap<>(Map.of(0, new Deal(0, new int[0])));
        for (List<Integer> group : groups) {
            Map<Integer, Deal> next = new HashMap<>();
            best.forEach((used, deal) -> {
                for (int owner = 0; owner < inputs.size(); owner++) {
                    if ((used & 1 << owner) == 0) {
                        next.merge(used | 1 << owner, deal.with(owner, level(group, owner)), Deal::better);
                    }
                }
            });
            best = next;
        }
        return best.values().stream().reduce(Deal::better).orElseThrow().owners();
    }

    private record Deal(double sum, int[] owners) {
        Deal with(int owner, double level) {
            int[] more = Arrays.copyOf(owners, owners.length + 1);
            more[owners.length] = owner;
            return new Deal(sum + level, more);
        }

        static Deal better(Deal a, Deal b) {
            return a.sum >= b.sum ? a : b;
        }
    }
}
