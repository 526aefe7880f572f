package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Optional;
import org.junit.jupiter.api.Test;

class RecentlyUsedTest {
    private final RecentlyUsed<String, String> shelf = new RecentlyUsed<>(10, String::length);

    @Test
    void what_was_not_asked_for_longest_goes_first() {
        shelf.put("a", "four");
        shelf.put("b", "four");
        shelf.get("a");
        shelf.put("c", "four");
        assertEquals(Optional.of("four"), shelf.get("a"));
        assertEquals(Optional.empty(), shelf.get("b"));
        assertEquals(8, shelf.weight());
    }

    @Test
    void what_is_put_again_weighs_once_and_what_is_too_heavy_stays_outside() {
        shelf.put("a", "four");
        shelf.put("a", "sixsix");
        shelf.put("b", "elevenlongs");
        assertEquals(6, shelf.weight());
        assertEquals(Optional.of("sixsix"), shelf.get("a"));
        assertEquals(Optional.empty(), shelf.get("b"));
    }
}
