package rosinbook.take;

import java.util.List;
import java.util.Locale;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Puts voices on a grid into MusicXML, measure by measure. */
final class MusicXmlWriter {
    private static final String[] TYPES = {"whole", "half", "quarter", "eighth", "16th", "32nd"};
    private static final int QUARTERS_PER_MEASURE = 4;

    private final XMLStreamWriter xml;
    private final int stepsPerQuarter;
    private final int stepsPerMeasure;

    MusicXmlWriter(XMLStreamWriter xml, int stepsPerQuarter) {
        this.xml = xml;
        this.stepsPerQuarter = stepsPerQuarter;
        stepsPerMeasure = QUARTERS_PER_MEASURE * stepsPerQuarter;
    }

    void write(List<List<ScoreLine.Chord>> voices, Tuning tuning, double bpm) throws XMLStreamException {
        xml.writeStartDocument("UTF-8", "1.0");
        xml.writeDTD("<!DOCTYPE score-partwise PUBLIC \"-//Recordare//DTD MusicXML 4.0 Partwise//EN\""
                + " \"http://www.musicxml.org/dtds/partwise.dtd\">");
        open("score-partwise", "version", "4.0");
        open("part-list");
        open("score-part", "id", "P1");
        element("part-name", "Take");
        close(2);
        open("part", "id", "P1");
        int end = 0;
        for (List<ScoreLine.Chord> voice : voices) {
            if (!voice.isEmpty()) {
                ScoreLine.Chord last = voice.get(voice.size() - 1);
                end = Math.max(end, last.start() + last.steps());
            }
        }
        int measures = Math.max(1, (end + stepsPerMeasure - 1) / stepsPerMeasure);
        int[] next = new int[voices.size()];
        for (int measure = 0; measure < measures; measure++) {
            open("measure", "number", String.valueOf(measure + 1));
            if (measure == 0) {
                attributes(tuning);
                tempo(bpm);
            }
            for (int voice = 0; voice < voices.size(); voice++) {
                if (voice > 0) {
                    open("backup");
                    element("duration", stepsPerMeasure);
                    close(1);
                }
                next[voice] = measure(voices.get(voice), next[voice], measure * stepsPerMeasure, voice + 1);
            }
            close(1);
        }
        close(2);
        xml.writeEndDocument();
    }

    private void attributes(Tuning tuning) throws XMLStreamException {
        int lowest = tuning.open(tuning.strings()).midi();
        open("attributes");
        element("divisions", stepsPerQuarter);
        open("key");
        element("fifths", 0);
        close(1);
        open("time");
        element("beats", QUARTERS_PER_MEASURE);
        element("beat-type", 4);
        close(1);
        open("clef");
        boolean bass = lowest < 48;
        boolean alto = !bass && lowest < 55 && tuning.open(1).midi() < 76;
        element("sign", bass ? "F" : alto ? "C" : "G");
        element("line", bass ? 4 : alto ? 3 : 2);
        close(2);
    }

    private void tempo(double bpm) throws XMLStreamException {
        String figure = String.format(Locale.ROOT, "%.1f", bpm);
        open("direction", "placement", "above");
        open("direction-type");
        open("metronome");
        element("beat-unit", "quarter");
        element("per-minute", figure);
        close(2);
        xml.writeEmptyElement("sound");
        xml.writeAttribute("tempo", figure);
        close(1);
    }

    /** Fills one measure of one voice; returns the first chord that reaches beyond it or lies after it. */
    private int measure(List<ScoreLine.Chord> chords, int next, int start, int voice) throws XMLStreamException {
        int end = start + stepsPerMeasure;
        int at = start;
        int index = next;
        while (index < chords.size() && chords.get(index).start() < end) {
            ScoreLine.Chord chord = chords.get(index);
            rest(Math.max(at, chord.start()) - at, voice);
            int from = Math.max(start, chord.start());
            int to = Math.min(end, chord.start() + chord.steps());
            pieces(chord, from, to, voice);
            at = to;
            if (chord.start() + chord.steps() > end) {
                return index;
            }
            index++;
        }
        rest(end - at, voice);
        return index;
    }

    private void rest(int steps, int voice) throws XMLStreamException {
        int left = steps;
        while (left > 0) {
            int length = notatable(left);
            open("note");
            xml.writeEmptyElement("rest");
            element("duration", length);
            element("voice", voice);
            type(length);
            close(1);
            left -= length;
        }
    }

    private void pieces(ScoreLine.Chord chord, int from, int to, int voice) throws XMLStreamException {
        int at = from;
        while (at < to) {
            int length = notatable(to - at);
            boolean first = at == chord.start();
            boolean last = at + length == chord.start() + chord.steps();
            boolean chordNote = false;
            for (ScoreLine.Head head : chord.heads()) {
                note(head, length, first, last, chordNote, voice);
                chordNote = true;
            }
            at += length;
        }
    }

    private void note(ScoreLine.Head head, int length, boolean first, boolean last, boolean chordNote, int voice)
            throws XMLStreamException {
        open("note");
        if (chordNote) {
            xml.writeEmptyElement("chord");
        }
        pitch(head);
        element("duration", length);
        if (!first) {
            empty("tie", "type", "stop");
        }
        if (!last) {
            empty("tie", "type", "start");
        }
        element("voice", voice);
        type(length);
        open("notations");
        if (!first) {
            empty("tied", "type", "stop");
        }
        if (!last) {
            empty("tied", "type", "start");
        }
        String string = String.valueOf(head.string());
        if (head.slideOn() && first) {
            empty("slide", "number", string, "type", "stop");
        }
        if (head.slideOff() && last) {
            empty("slide", "number", string, "type", "start");
        }
        open("technical");
        element("string", string);
        close(3);
    }

    private void pitch(ScoreLine.Head head) throws XMLStreamException {
        String name = head.note().toString();
        open("pitch");
        element("step", name.substring(0, 1));
        if (name.charAt(1) == '#') {
            element("alter", 1);
        } else if (name.charAt(1) == 'b') {
            element("alter", -1);
        }
        element("octave", Math.max(0, head.note().midi() / 12 - 1));
        close(1);
    }

    /** The longest that one note, dotted or not, can show of so many steps. */
    private int notatable(int steps) {
        for (int whole = stepsPerMeasure; whole >= 1; whole /= 2) {
            if (whole * 3 / 2 <= steps && whole > 1 && whole < stepsPerMeasure) {
                return whole * 3 / 2;
            }
            if (whole <= steps) {
                return whole;
            }
        }
        throw new IllegalStateException(steps + " steps cannot be written");
    }

    private void type(int steps) throws XMLStreamException {
        int type = 0;
        int length = stepsPerMeasure;
        while (length > steps) {
            length /= 2;
            type++;
        }
        element("type", TYPES[type]);
        if (length < steps) {
            xml.writeEmptyElement("dot");
        }
    }

    private void open(String name, String... attributes) throws XMLStreamException {
        xml.writeStartElement(name);
        attributes(attributes);
    }

    private void empty(String name, String... attributes) throws XMLStreamException {
        xml.writeEmptyElement(name);
        attributes(attributes);
    }

    private void attributes(String... attributes) throws XMLStreamException {
        for (int index = 0; index < attributes.length; index += 2) {
            xml.writeAttribute(attributes[index], attributes[index + 1]);
        }
    }

    private void element(String name, Object content) throws XMLStreamException {
        xml.writeStartElement(name);
        xml.writeCharacters(content.toString());
        xml.writeEndElement();
    }

    private void close(int levels) throws XMLStreamException {
        for (int level = 0; level < levels; level++) {
            xml.writeEndElement();
        }
    }
}
