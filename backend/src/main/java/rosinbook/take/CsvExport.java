package rosinbook.take;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Notes and faults as comma-separated values, CRLF line ends, first line the names. Source: RFC 4180. */
public final class CsvExport {
    private CsvExport() {}

    /** One line a note of the cleaned take: times in seconds, strings and channels from 1. */
    public static String notes(Cleaning cleaning) {
        StringBuilder csv = new StringBuilder("string,channel,note,number,velocity,start,end,made_from\r\n");
        for (CleanNote clean : cleaning.notes()) {
            TakeNote note = clean.note();
            csv.append(String.format(
                    Locale.ROOT,
                    "%d,%d,%s,%d,%d,%.6f,%.6f,%s\r\n",
                    note.string(),
                    note.channel(),
                    note.note(),
                    note.note().midi(),
                    note.velocity(),
                    note.onSeconds(),
                    note.offSeconds(),
                    ids(clean.from())));
        }
        return csv.toString();
    }

    /** One line a fault. */
    public static String faults(Cleaning cleaning) {
        StringBuilder csv = new StringBuilder("kind,string,at,note,notes,because,repair,refused\r\n");
        for (Fault fault : cleaning.faults()) {
            csv.append(String.format(
                    Locale.ROOT,
                    "%s,%d,%.6f,%s,%s,%s,%s,%s\r\n",
                    fault.kind().label(),
                    fault.string(),
                    fault.atSeconds(),
                    fault.note(),
                    ids(fault.notes()),
                    quoted(fault.because()),
                    quoted(fault.repair()),
                    fault.refused() ? "yes" : "no"));
        }
        return csv.toString();
    }

    private static String ids(List<Integer> ids) {
        return ids.stream().map(String::valueOf).collect(Collectors.joining(" "));
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }
}
