package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rosinbook.circuit.Adapter;
import rosinbook.circuit.MeterReading;
import rosinbook.level.LevelSummary;

/**
 * An instrument, an adapter, a synth and the assignments between them, at one moment.
 *
 * @param date the day these settings were made; absent if not noted
 * @param assignments per string, keyed by string number
 * @param adapter the wiring; absent if a ready-made cable does
 * @param readings what a meter showed, by the step of the adapter's meter plan
 * @param levels what the level bench measured when these sensitivities were set; absent if it did not
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Rig(
        String title,
        LocalDate date,
        Reference instrument,
        Reference synth,
        Adapter adapter,
        Map<String, MeterReading> readings,
        Map<String, Assignment> assignments,
        LevelSummary levels,
        String notes)
        implements Content {
    /** As many as a wiring takes. */
    private static final int MAX_READINGS = 1000;

    /** As long as a step's id can be. */
    private static final int MAX_STEP_LENGTH = 80;

    public Rig {
        title = Require.title("title", title);
        if (date != null) {
            Require.day("date", date);
        }
        Require.present("instrument", instrument);
        Require.present("synth", synth);
        readings = Require.labelled("readings", readings, MAX_READINGS, MAX_STEP_LENGTH);
        assignments = Require.keyed("assignments", assignments, 7);
        assignments.keySet().forEach(key -> {
            if (!key.matches("[1-7]")) {
                throw new IllegalArgumentException("assignments has a key that is no string number, 1 to 7");
            }
        });
        notes = Require.text("notes", notes);
    }

    @Override
    public Map<String, Link> links() {
        Map<String, Link> links = new LinkedHashMap<>();
        links.put("/instrument", Link.of(Relation.INSTRUMENT, Kind.INSTRUMENTS, instrument));
        links.put("/synth", Link.of(Relation.SYNTH, Kind.SYNTHS, synth));
        return links;
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.of(notes);
    }

    @Override
    public Optional<LocalDate> day() {
        return Optional.ofNullable(date);
    }

    /** The same rig with its instrument and synth held at exact revisions. */
    Rig pinned(Reference exactInstrument, Reference exactSynth) {
        return new Rig(title, date, exactInstrument, exactSynth, adapter, readings, assignments, levels, notes);
    }

    /**
     * Where one string goes.
     *
     * @param input the synth's input, from 1; absent while the string is not heard
     * @param sensitivity on the synth's own scale; absent while not set
     * @param trimDecibels level correction, -60 to 60 dB
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Assignment(Integer input, Double sensitivity, Double trimDecibels) {
        public Assignment {
            if (input != null) {
                Require.within("input", input.doubleValue(), 1, 16, "");
            }
            if (sensitivity != null) {
                sensitivity = Require.finite("sensitivity", sensitivity);
            }
            trimDecibels = Require.within("trimDecibels", trimDecibels == null ? 0 : trimDecibels, -60, 60, "dB");
        }
    }
}
