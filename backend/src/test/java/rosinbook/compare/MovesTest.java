package rosinbook.compare;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class MovesTest {
    @Test
    void lifting_one_piece_to_the_front_moves_only_that_piece() {
        assertEquals(Set.of("d"), Moves.between(List.of("a", "b", "c", "d"), List.of("d", "a", "b", "c")));
    }

    @Test
    void a_piece_put_in_between_moves_nobody() {
        assertTrue(Moves.between(List.of("a", "b"), List.of("a", "new", "b")).isEmpty());
    }

    @Test
    void a_piece_left_out_moves_nobody() {
        assertTrue(Moves.between(List.of("a", "b", "c"), List.of("a", "c")).isEmpty());
    }

    @Property(seed = "8017")
    void without_what_moved_both_orders_are_the_same(@ForAll @IntRange(max = 8) int size, @ForAll long seed) {
        List<Integer> was = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            was.add(i);
        }
        List<Integer> now = new ArrayList<>(was);
        java.util.Collections.shuffle(now, new java.util.Random(seed));
        Set<Integer> moved = Moves.between(was, now);
        List<Integer> before = new ArrayList<>(was);
        before.removeAll(moved);
        List<Integer> after = new ArrayList<>(now);
        after.removeAll(moved);
        assertEquals(before, after);
    }
}
