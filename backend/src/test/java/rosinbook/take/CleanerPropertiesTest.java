package rosinbook.take;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import rosinbook.pitch.Note;
import rosinbook.take.smf.Division;
import rosinbook.take.smf.TempoMap;

/** What holds for any take, however odd. */
class CleanerPropertiesTest {
    @Property(seed = "8017", tries = 300)
    void cleaning_twice_is_cleaning_once(@ForAll("takes") Take take) {
        Cleaning first = Cleaner.STANDARD.clean(take);
        Take once = first.cleaned();
        Cleaning twice = Cleaner.STANDARD.clean(once);
        assertEquals(List.of(), twice.faults(), () -> "after " + first.faults() + " in " + take.notes());
        assertEquals(once.notes(), twice.cleaned().notes());
    }

    @Property(seed = "8017", tries = 200)
    void transposing_take_and_strings_transposes_what_is_cleaned(
            @ForAll("takes") Take take, @ForAll @IntRange(min = -20, max = 12) int semitones) {
        assertEquals(
                Playing.shape(transposed(Cleaner.STANDARD.clean(take).cleaned(), semitones)),
                Playing.shape(
                        Cleaner.STANDARD.clean(transposed(take, semitones)).cleaned()));
    }

    @Property(seed = "8017", tries = 200)
    void other_channels_change_nothing_else(
            @ForAll("takes") Take take, @ForAll @IntRange(min = 1, max = 12) int shift) {
        assertEquals(
                onChannels(Cleaner.STANDARD.clean(take).cleaned(), shift).notes(),
                Cleaner.STANDARD.clean(onChannels(take, shift)).cleaned().notes());
    }

    @Property(seed = "8017", tries = 200)
    void stretching_time_and_thresholds_alike_stretches_what_is_cleaned(
            @ForAll("takes") Take take, @ForAll @DoubleRange(min = 0.3, max = 4) double factor) {
        Take slower = inTempo(take, (int) Math.round(500_000 * factor));
        double exact = Math.round(500_000 * factor) / 500_000.0;
        assertEquals(
                Playing.shape(Cleaner.STANDARD.clean(take).cleaned()),
                Playing.shape(new Cleaner(Thresholds.STANDARD.stretched(exact))
                        .clean(slower)
                        .cleaned()));
    }

    @Property(seed = "8017", tries = 200)
    void another_tempo_map_with_the_same_seconds_gives_the_same_seconds(
            @ForAll("takes") Take take, @ForAll @IntRange(min = 1, max = 6) int finer) {
        Take written = written(take, finer);
        assertEquals(
                seconds(Cleaner.STANDARD.clean(take).cleaned()),
                seconds(Cleaner.STANDARD.clean(written).cleaned()));
    }

    @Property(seed = "8017", tries = 200)
    void every_note_kept_comes_from_notes_heard_and_none_twice(@ForAll("takes") Take take) {
        Cleaning cleaning = Cleaner.STANDARD.clean(take);
        Map<Integer, Integer> uses = new HashMap<>();
        for (CleanNote note : cleaning.notes()) {
            note.from().forEach(id -> uses.merge(id, 1, Integer::sum));
            assertEquals(
                    note.note().string(), take.notes().get(note.from().get(0)).string());
        }
        uses.forEach((id, count) -> assertEquals(1, count, "note " + id));
    }

    /** Strings with runs of notes drawn so that every kind of fault turns up often. */
    @Provide
    Arbitrary<Take> takes() {
        return note().list().ofMinSize(0).ofMaxSize(120).map(CleanerPropertiesTest::take);
    }

    private record Drawn(int string, int above, int gapTicks, int ticks, int velocity, boolean hanging) {}

    private static Arbitrary<Drawn> note() {
        return Combinators.combine(
                        Arbitraries.integers().between(1, 4),
                        Arbitraries.frequencyOf(
                                Tuple.of(6, Arbitraries.integers().between(0, 4)),
                                Tuple.of(2, Arbitraries.of(12, 14, 19, 24)),
                                Tuple.of(1, Arbitraries.integers().between(-4, 36))),
                        Arbitraries.frequencyOf(
                                Tuple.of(5, Arbitraries.just(0)),
                                Tuple.of(3, Arbitraries.integers().between(1, 60)),
                                Tuple.of(1, Arbitraries.integers().between(-30, 600))),
                        Arbitraries.frequencyOf(
                                Tuple.of(3, Arbitraries.integers().between(5, 60)),
                                Tuple.of(3, Arbitraries.of(120, 240, 480, 960)),
                                Tuple.of(2, Arbitraries.integers().between(0, 1500))),
                        Arbitraries.integers().between(30, 127),
                        Arbitraries.frequency(Tuple.of(40, false), Tuple.of(1, true)))
                .as(Drawn::new);
    }

    private static Take take(List<Drawn> drawn) {
        long[] at = new long[5];
        List<TakeNote> notes = new ArrayList<>();
        for (Drawn note : drawn) {
            long on = Math.max(0, at[note.string] + note.gapTicks);
            long off = on + note.ticks;
            at[note.string] = off;
            notes.add(new TakeNote(
                    0,
                    note.string,
                    note.string,
                    new Note(Tuning.VIOLIN.open(note.string).midi() + note.above),
                    0,
                    note.velocity,
                    on,
                    off,
                    Playing.TICKS.seconds(on),
                    Playing.TICKS.seconds(off),
                    note.hanging));
        }
        return Playing.take(Tuning.VIOLIN, notes);
    }

    private static Take transposed(Take take, int semitones) {
        List<Note> open = take.tuning().openStrings().stream()
                .map(note -> new Note(note.midi() + semitones))
                .collect(Collectors.toList());
        List<TakeNote> notes = take.notes().stream()
                .map(note -> new TakeNote(
                        note.id(),
                        note.string(),
                        note.channel(),
                        new Note(note.note().midi() + semitones),
                        0,
                        note.velocity(),
                        note.onTick(),
                        note.offTick(),
                        note.onSeconds(),
                        note.offSeconds(),
                        note.hanging()))
                .collect(Collectors.toList());
        return Playing.take(new Tuning(open), notes);
    }

    private static Take onChannels(Take take, int shift) {
        List<TakeNote> notes = take.notes().stream()
                .map(note -> new TakeNote(
                        note.id(),
                        note.string(),
                        note.string() + shift,
                        note.note(),
                        0,
                        note.velocity(),
                        note.onTick(),
                        note.offTick(),
                        note.onSeconds(),
                        note.offSeconds(),
                        note.hanging()))
                .collect(Collectors.toList());
        return new Take(
                notes, take.tuning(), StringLayout.fromChannel(1 + shift), take.tempoMap(), List.of(), List.of());
    }

    private static Take inTempo(Take take, int microsPerQuarter) {
        return timed(
                take, TempoMap.of(new Division.Metrical(480), List.of(new TempoMap.Change(0, microsPerQuarter))), 1);
    }

    /** The same seconds with more ticks and a faster tempo. */
    private static Take written(Take take, int finer) {
        return timed(take, TempoMap.of(new Division.Metrical(480 * finer), List.of()), finer);
    }

    private static Take timed(Take take, TempoMap tempoMap, int ticksTimes) {
        List<TakeNote> notes = take.notes().stream()
                .map(note -> new TakeNote(
                        note.id(),
                        note.string(),
                        note.channel(),
                        note.note(),
                        0,
                        note.velocity(),
                        note.onTick() * ticksTimes,
                        note.offTick() * ticksTimes,
                        tempoMap.seconds(note.onTick() * ticksTimes),
                        tempoMap.seconds(note.offTick() * ticksTimes),
                        note.hanging()))
                .collect(Collectors.toList());
        return new Take(notes, take.tuning(), take.layout(), tempoMap, List.of(), List.of());
    }

    /** Starts and ends in 960ths of a second, which every tempo map here can show. */
    private static List<String> seconds(Take take) {
        return take.notes().stream()
                .map(note -> note.string() + " " + note.note() + " " + Math.round(note.onSeconds() * 960) + "-"
                        + Math.round(note.offSeconds() * 960) + " v" + note.velocity())
                .collect(Collectors.toList());
    }
}
