package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URLDecoder;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class FileNameTest {
    @Test
    void a_title_of_plain_letters_is_told_once() {
        assertEquals(
                "attachment; filename=\"Low-Water-2.mid\"", FileName.attachment(" Low / Water: 2\" ", "take", "mid"));
        assertEquals("attachment; filename=\"take.notes.csv\"", FileName.attachment("?!", "take", "notes.csv"));
    }

    /** RFC 8187, section 3.2.3: UTF-8, percent-encoded. Ü is C3 9C (RFC 3629). */
    @Test
    void letters_of_all_scripts_are_told_too() {
        assertEquals(
                "attachment; filename=\"bung-3.html\"; filename*=UTF-8''%C3%9Cbung-3.html",
                FileName.attachment("Übung 3", "rosinbook", "html"));
        assertEquals(
                "attachment; filename=\"rosinbook.html\"; filename*=UTF-8''%D0%92%D0%BE%D0%B4%D0%B0.html",
                FileName.attachment("Вода", "rosinbook", "html"));
    }

    @Test
    void a_long_title_is_cut_between_letters() {
        String gothic = "\uD800\uDF30"; // one letter of two chars
        String told = FileName.attachment(gothic.repeat(100), "take", "mid");
        String name = URLDecoder.decode(told.replaceFirst(".*UTF-8''", ""), StandardCharsets.UTF_8);
        assertEquals(gothic.repeat(60) + ".mid", name);
        assertTrue(told.startsWith("attachment; filename=\"take.mid\"; "), told);
    }

    @Test
    void nothing_in_a_title_gets_out_of_the_header() {
        assertEquals(
                "attachment; filename=\"a-X-Evil-1-b.html\"",
                FileName.attachment("a\"\r\nX-Evil: 1; \\b", "rosinbook", "html"));
    }
}
