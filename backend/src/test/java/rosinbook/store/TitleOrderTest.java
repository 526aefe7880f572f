package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.StringLength;
import org.junit.jupiter.api.Test;

class TitleOrderTest {
    @Test
    void titles_stand_by_their_letters_whatever_their_case_and_accents() {
        List<String> inOrder = List.of("7/8 Rag", "Äpfel im Wind", "apple", "Zebra", "Ωδή", "弓");
        for (int i = 1; i < inOrder.size(); i++) {
            String earlier = TitleOrder.key(inOrder.get(i - 1));
            String later = TitleOrder.key(inOrder.get(i));
            assertTrue(earlier.compareTo(later) < 0, inOrder.get(i - 1) + " before " + inOrder.get(i));
        }
        assertEquals(TitleOrder.key("ÉLAN"), TitleOrder.key("élan"));
        assertEquals(TitleOrder.key("E\u0301lan"), TitleOrder.key("\u00c9lan"));
    }

    @Property(seed = "8017", generation = net.jqwik.api.GenerationMode.RANDOMIZED)
    void a_list_goes_on_where_it_stopped_because_the_text_of_a_text_is_itself(
            @ForAll @StringLength(max = 300) String title) {
        assertEquals(TitleOrder.text(title), TitleOrder.text(TitleOrder.text(title)));
        assertTrue(TitleOrder.key(title).length() <= 800);
    }
}
