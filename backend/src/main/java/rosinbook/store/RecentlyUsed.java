package rosinbook.store;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;

/**
 * Keeps what was read or made lately, up to a weight; what was not asked for longest goes first. Safe for use by several
 * threads.
 */
final class RecentlyUsed<K, V> {
    private final Map<K, V> entries = new LinkedHashMap<>(64, 0.75f, true);
    private final long mostWeight;
    private final ToLongFunction<V> weight;
    private long total;

    /** @param weight of an entry; must always be the same for the same entry */
    RecentlyUsed(long mostWeight, ToLongFunction<V> weight) {
        this.mostWeight = mostWeight;
        this.weight = weight;
    }

    synchronized Optional<V> get(K key) {
        return Optional.ofNullable(entries.get(key));
    }

    /** What is too heavy for the whole shelf is not kept. */
    synchronized void put(K key, V value) {
        long heavy = weight.applyAsLong(value);
        if (heavy > mostWeight) {
            return;
        }
        V before = entries.put(key, value);
        total += heavy - (before == null ? 0 : weight.applyAsLong(before));
        var oldest = entries.values().iterator();
        while (total > mostWeight) {
            total -= weight.applyAsLong(oldest.next());
            oldest.remove();
        }
    }

    synchronized long weight() {
        return total;
    }
}
