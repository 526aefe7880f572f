package rosinbook.web;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rosinbook.pitch.Note;
import rosinbook.take.CleanNote;
import rosinbook.take.Cleaning;
import rosinbook.take.Fault;
import rosinbook.take.Scores;
import rosinbook.take.StringLayout;
import rosinbook.take.StringReport;
import rosinbook.take.Take;
import rosinbook.take.TakeNote;
import rosinbook.take.TakeReport;
import rosinbook.take.Threshold;
import rosinbook.take.smf.TempoMap;

/** A report as it is sent: how the file was read, and notes in short, since there may be a hundred thousand. */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
record TakeAnswer(
        TakeReport.Notes notes,
        double seconds,
        Map<String, Note> strings,
        StringLayout layout,
        List<Fault> faults,
        List<StringReport> perString,
        TakeReport.Tracking tracking,
        List<String> advice,
        List<String> remarks,
        Optional<Scores> score,
        Optional<Scores> scoreRaw,
        List<Heard> before,
        List<Played> after,
        Map<Threshold, Double> thresholds) {
    /** A note as it came; times in seconds. */
    record Heard(int id, int string, int noteNumber, int velocity, double on, double off) {
        static Heard of(TakeNote note) {
            return new Heard(
                    note.id(),
                    note.string(),
                    (int) Math.round(note.pitch()),
                    note.velocity(),
                    rounded(note.onSeconds()),
                    rounded(note.offSeconds()));
        }
    }

    /** A note as it was played, with the ids of the notes it was made from. */
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
    record Played(
            int string,
            int noteNumber,
            int velocity,
            double on,
            double off,
            List<Integer> from,
            Optional<Slide> glide) {
        static Played of(CleanNote clean, TempoMap tempoMap) {
            Heard note = Heard.of(clean.note());
            return new Played(
                    note.string(),
                    note.noteNumber(),
                    note.velocity(),
                    note.on(),
                    note.off(),
                    clean.from(),
                    clean.glide()
                            .map(glide -> new Slide(
                                    rounded(tempoMap.seconds(glide.fromTick())),
                                    rounded(tempoMap.seconds(glide.toTick())),
                                    glide.semitones())));
        }
    }

    /** A slide at the end of a note; times in seconds. */
    record Slide(double from, double to, int semitones) {}

    static TakeAnswer of(Cleaning cleaning, TakeReport report) {
        Take take = cleaning.take();
        Map<String, Note> strings = new TreeMap<>();
        for (int string = 1; string <= take.tuning().strings(); string++) {
            strings.put(Integer.toString(string), take.tuning().open(string));
        }
        return new TakeAnswer(
                report.notes(),
                report.seconds(),
                strings,
                take.layout(),
                report.faults(),
                report.perString(),
                report.tracking(),
                report.advice(),
                report.remarks(),
                report.score(),
                report.scoreRaw(),
                report.before().stream().map(Heard::of).toList(),
                report.after().stream()
                        .map(note -> Played.of(note, take.tempoMap()))
                        .toList(),
                report.thresholds());
    }

    private static double rounded(double seconds) {
        return Math.rint(seconds * 1e4) / 1e4;
    }
}
