package rosinbook.take;

import java.io.StringWriter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import rosinbook.limit.Limit;

/**
 * A cleaned take as sheet music: MusicXML 4.0 (W3C Music Notation Community Group, 2021), one part, 4/4, no key signature. The
 * first note falls on the first beat. Starts and ends are moved to the grid, so this is a sketch to read from, not a record.
 *
 * @param tempoBpm quarters a minute, 20 to 400, or empty to estimate it
 * @param stepsPerQuarter the grid: 1, 2, 4 or 8
 * @param stringsAsVoices whether each string is a voice of its own, or all are one line with chords
 */
public record MusicXmlExport(OptionalDouble tempoBpm, int stepsPerQuarter, boolean stringsAsVoices) {
    /** Tempo estimated, sixteenths, one line. */
    public static final MusicXmlExport STANDARD = new MusicXmlExport(OptionalDouble.empty(), 4, false);

    private static final int QUARTERS_PER_MEASURE = 4;

    /** @throws IllegalArgumentException if the tempo or the grid is out of range */
    public MusicXmlExport {
        if (tempoBpm.isPresent() && !(tempoBpm.getAsDouble() >= 20 && tempoBpm.getAsDouble() <= 400)) {
            throw new IllegalArgumentException(
                    "tempo is " + tempoBpm.getAsDouble() + "; give 20 to 400 quarters a minute");
        }
        if (stepsPerQuarter != 1 && stepsPerQuarter != 2 && stepsPerQuarter != 4 && stepsPerQuarter != 8) {
            throw new IllegalArgumentException("grid is " + stepsPerQuarter + " steps a quarter; give 1, 2, 4 or 8");
        }
    }

    /**
     * The document.
     *
     * @throws IllegalArgumentException if it would have more than 20 000 measures
     */
    public String toXml(Cleaning cleaning) {
        List<CleanNote> notes = cleaning.notes();
        double bpm = tempoBpm.orElseGet(() -> TempoEstimate.bpm(notes));
        double stepSeconds = 60 / bpm / stepsPerQuarter;
        double origin = notes.isEmpty() ? 0 : notes.get(0).note().onSeconds();
        Limit.MEASURES.check(
                (long) (cleaning.take().seconds() / stepSeconds / (QUARTERS_PER_MEASURE * stepsPerQuarter)));
        Set<Integer> arrivals = arrivals(notes);
        List<List<ScoreLine.Chord>> voices = voices(cleaning).stream()
                .map(voice -> ScoreLine.of(voice, arrivals, origin, stepSeconds))
                .collect(Collectors.toList());
        StringWriter text = new StringWriter();
        try {
            XMLStreamWriter xml = XMLOutputFactory.newFactory().createXMLStreamWriter(text);
            new MusicXmlWriter(xml, stepsPerQuarter)
                    .write(voices, cleaning.take().tuning(), bpm);
            xml.close();
        } catch (XMLStreamException impossible) {
            throw new IllegalStateException("writing to memory failed", impossible);
        }
        return text.toString();
    }

    private List<List<CleanNote>> voices(Cleaning cleaning) {
        if (!stringsAsVoices) {
            return List.of(cleaning.notes());
        }
        Map<Integer, List<CleanNote>> byString = cleaning.notes().stream()
                .collect(Collectors.groupingBy(clean -> clean.note().string()));
        List<List<CleanNote>> voices = new ArrayList<>();
        for (int string = 1; string <= cleaning.take().tuning().strings(); string++) {
            voices.add(byString.getOrDefault(string, List.of()));
        }
        return voices;
    }

    private static Set<Integer> arrivals(List<CleanNote> notes) {
        Map<Integer, CleanNote> last = new HashMap<>();
        Set<Integer> arrivals = new HashSet<>();
        for (CleanNote clean : notes) {
            CleanNote before = last.put(clean.note().string(), clean);
            if (before != null && before.glide().isPresent()) {
                arrivals.add(clean.note().id());
            }
        }
        return arrivals;
    }
}
