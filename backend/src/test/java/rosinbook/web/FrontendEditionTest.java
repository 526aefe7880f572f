package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FrontendEditionTest {
    /** As sha256sum of GNU coreutils has it. */
    @Test
    void a_files_hash_is_the_one_of_its_bytes_whatever_they_are() {
        assertEquals(
                "a8100ae6aa1940d0b663bb31cd466142ebbdbd5187131b92d93818987832eb89",
                FrontendEdition.hash(new byte[] {(byte) 0xff}));
    }
}
