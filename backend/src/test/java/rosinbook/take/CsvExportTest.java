package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** RFC 4180: CRLF, quotes around what may hold a comma. */
class CsvExportTest {
    private static final Cleaning CLEANING = Cleaner.STANDARD.clean(Playing.violin()
            .note(2, "A4", 1, 2, 100)
            .note(3, "A4", 1.06, 1.8, 60)
            .take());

    @Test
    void notes_come_one_a_line() {
        assertEquals(
                "string,channel,note,number,velocity,start,end,made_from\r\n2,2,A4,69,100,1.000000,2.000000,0\r\n",
                CsvExport.notes(CLEANING));
    }

    @Test
    void faults_come_one_a_line_with_their_reason() {
        assertEquals(
                "kind,string,at,note,notes,because,repair,refused\r\n"
                        + "ghost,3,1.060417,A4,1 0,\"It sounds at the same pitch and is 40 quieter in velocity than A4 on"
                        + " string 2, which sounds at that moment.\",\"Drop the note.\",no\r\n",
                CsvExport.faults(CLEANING));
    }
}
