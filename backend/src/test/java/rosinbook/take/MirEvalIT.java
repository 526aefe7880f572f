package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.testing.Needs;

/** Our scores against mir_eval (Debian python3-mir-eval), on every published take as it came and cleaned. */
class MirEvalIT {
    /** Prints, for each pair of files of "on off hertz string" lines, matches and F1 as mir_eval finds them. */
    private static final String SCRIPT =
            """
            import sys, numpy, mir_eval.transcription as t
            def read(name):
                rows = [[float(x) for x in line.split()] for line in open(name)]
                return numpy.array(rows).reshape(-1, 4)
            def matches(ref, est, ratio):
                if len(ref) == 0 or len(est) == 0:
                    return 0
                return len(t.match_notes(ref[:, :2], ref[:, 2], est[:, :2], est[:, 2], offset_ratio=ratio))
            for line in open(sys.argv[1]):
                ref, est = map(read, line.split())
                for ratio in (None, 0.2):
                    m = sum(matches(ref[ref[:, 3] == s], est[est[:, 3] == s], ratio) for s in range(1, 7))
                    whole = t.precision_recall_f1_overlap(ref[:, :2], ref[:, 2], est[:, :2], est[:, 2], offset_ratio=ratio)
                    print(m / len(est), m / len(ref), 2 * m / (len(est) + len(ref)), *whole[:3])
            """;

    @TempDir
    private Path folder;

    @BeforeAll
    static void needsMirEval() throws Exception {
        Needs.met(
                python("-c", "import mir_eval").waitFor() == 0,
                "scores are compared with mir_eval; install Debian's python3-mir-eval");
    }

    @Test
    void every_take_scores_as_mir_eval_says() throws Exception {
        List<Scores> ours = new ArrayList<>();
        List<String> pairs = new ArrayList<>();
        for (String piece : List.of("o1_air", "o2_slides", "o3_reel", "o4_five")) {
            Take truth = Playing.published(piece, "truth");
            for (String setting : List.of("under", "reasonable", "over")) {
                Take raw = Playing.published(piece, setting);
                for (Take take : List.of(raw, Cleaner.STANDARD.clean(raw).cleaned())) {
                    ours.add(Scores.of(truth, take));
                    pairs.add(write(truth) + " " + write(take));
                }
            }
        }
        Path list = Files.write(folder.resolve("pairs.txt"), pairs);
        Process process = python("-c", SCRIPT, list.toString());
        List<String> lines = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                .toList();
        assertEquals(0, process.waitFor());
        assertEquals(ours.size() * 2, lines.size());
        for (int index = 0; index < ours.size(); index++) {
            Scores scores = ours.get(index);
            agree(lines.get(2 * index), scores.onset(), scores.pitchOnset());
            agree(lines.get(2 * index + 1), scores.onsetOffset(), scores.pitchOnsetOffset());
        }
    }

    private static void agree(String line, NoteScore perString, NoteScore together) {
        String[] theirs = line.split(" ");
        double[] ours = {
            perString.precision(), perString.recall(), perString.f1(),
            together.precision(), together.recall(), together.f1()
        };
        for (int index = 0; index < ours.length; index++) {
            assertEquals(Double.parseDouble(theirs[index]), ours[index], 1e-6, line);
        }
    }

    private Path write(Take take) throws IOException {
        List<String> lines = new ArrayList<>();
        for (TakeNote note : take.notes()) {
            lines.add(String.format(
                    Locale.ROOT,
                    "%.17g %.17g %.17g %d",
                    note.onSeconds(),
                    note.offSeconds(),
                    note.note().hertz(440),
                    note.string()));
        }
        return Files.write(Files.createTempFile(folder, "notes", ".txt"), lines);
    }

    /** Debian's own Python, whatever else is on the path. */
    private static Process python(String... arguments) throws IOException {
        List<String> command = new ArrayList<>();
        command.add(Files.isExecutable(Path.of("/usr/bin/python3")) ? "/usr/bin/python3" : "python3");
        command.addAll(List.of(arguments));
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
    }
}
