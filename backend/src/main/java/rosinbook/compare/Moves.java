package rosinbook.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Which entries of an ordered list moved against the others. */
public final class Moves {
    private Moves() {}

    /**
     * The fewest entries that must have been lifted out and put elsewhere; entries in only one of the lists are left
     * aside, so an insertion moves nobody.
     *
     * @param was ids in their older order, each once
     * @param now ids in their newer order, each once
     * @see "Longest increasing subsequence: Knuth, The Art of Computer Programming 3, section 5.1.4"
     */
    public static <T> Set<T> between(List<T> was, List<T> now) {
        Map<T, Integer> newPlace = new HashMap<>();
        for (int i = 0; i < now.size(); i++) {
            newPlace.put(now.get(i), i);
        }
        List<T> common = was.stream().filter(newPlace::containsKey).toList();
        Set<T> moved = new HashSet<>(common);
        longestRising(common.stream().map(newPlace::get).toList()).forEach(index -> moved.remove(common.get(index)));
        return moved;
    }

    private static List<Integer> longestRising(List<Integer> places) {
        int[] tails = new int[places.size()];
        int[] before = new int[places.size()];
        int length = 0;
        for (int i = 0; i < places.size(); i++) {
            int place = places.get(i);
            int low = 0;
            int high = length;
            while (low < high) {
                int middle = (low + high) >>> 1;
                if (places.get(tails[middle]) < place) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            before[i] = low == 0 ? -1 : tails[low - 1];
            tails[low] = i;
            length = Math.max(length, low + 1);
        }
        Integer[] kept = new Integer[length];
        for (int at = length - 1, index = length == 0 ? -1 : tails[length - 1]; at >= 0; at--, index = before[index]) {
            kept[at] = index;
        }
        return new ArrayList<>(Arrays.asList(kept));
    }
}
