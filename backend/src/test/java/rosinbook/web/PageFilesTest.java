package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class PageFilesTest {
    private final PageFiles files = new PageFiles("/edition/0123456789ab");

    @Test
    void nothing_is_kept_of_files_that_are_not_there() {
        for (int i = 0; i < 100; i++) {
            assertTrue(files.find("/none-" + i + ".js").isEmpty());
        }
        assertEquals(0, files.kept());
    }

    @Test
    void a_file_is_read_once() {
        assertSame(files.find("/app.js").orElseThrow(), files.find("/app.js").orElseThrow());
        assertEquals(1, files.kept());
    }
}
