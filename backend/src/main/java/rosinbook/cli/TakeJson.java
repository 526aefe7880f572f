package rosinbook.cli;

import java.util.List;
import java.util.Optional;
import rosinbook.take.Fault;
import rosinbook.take.Scores;
import rosinbook.take.StringReport;
import rosinbook.take.TakeReport;

/** What the take command prints: the report without the notes themselves. */
record TakeJson(
        TakeReport.Notes notes,
        double seconds,
        List<Fault> faults,
        List<StringReport> perString,
        TakeReport.Tracking tracking,
        List<String> advice,
        List<String> remarks,
        Optional<Scores> score,
        Optional<Scores> scoreRaw) {
    static TakeJson of(TakeReport report) {
        return new TakeJson(
                report.notes(),
                report.seconds(),
                report.faults(),
                report.perString(),
                report.tracking(),
                report.advice(),
                report.remarks(),
                report.score(),
                report.scoreRaw());
    }
}
