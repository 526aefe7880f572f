package rosinbook.take;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rosinbook.take.smf.Division;
import rosinbook.take.smf.MidiFile;
import rosinbook.take.smf.MidiTrack;
import rosinbook.take.smf.TempoMap;

/**
 * A cleaned take as a Standard MIDI File: format 1, the tempo map first, then one track a string, on the take's own channels and
 * with its own ticks. Pitch bends of the take are kept; a glide is bend added at the end of the note it leaves.
 *
 * @param bendGlides whether slides bend, or come as two plain notes
 */
public record MidiExport(boolean bendGlides) {
    private static final int CENTRE = 0x2000;
    private static final int MOST_GLIDE_STEPS = 48;
    private static final int USUAL_RANGE = 2;

    /** At one tick: bends before everything, then ends, then starts. */
    private enum Turn {
        RANGE,
        BEND,
        OFF,
        ON
    }

    private record Event(long tick, Turn turn, int status, int data1, int data2) {}

    /** The file's bytes. */
    public byte[] toBytes(Cleaning cleaning) {
        Take take = cleaning.take();
        List<MidiTrack> tracks = new ArrayList<>();
        tracks.add(tempoTrack(take.tempoMap()));
        Map<Integer, List<CleanNote>> byString = new TreeMap<>();
        for (int string = 1; string <= take.tuning().strings(); string++) {
            byString.put(string, new ArrayList<>());
        }
        cleaning.notes().forEach(note -> byString.get(note.note().string()).add(note));
        boolean[] channelsDone = new boolean[17];
        byString.forEach((string, notes) -> tracks.add(track(take, string, notes, channelsDone)));
        return new MidiFile(1, take.tempoMap().division(), tracks).toBytes();
    }

    private static MidiTrack tempoTrack(TempoMap tempoMap) {
        MidiTrack.Builder track = new MidiTrack.Builder();
        if (tempoMap.division() instanceof Division.Metrical) {
            for (TempoMap.Change change : tempoMap.changes()) {
                int micros = change.microsPerQuarter();
                track.data(
                        change.tick(),
                        MidiTrack.META,
                        MidiTrack.TEMPO,
                        (byte) (micros >> 16),
                        (byte) (micros >> 8),
                        (byte) micros);
            }
        }
        return track.build();
    }

    private MidiTrack track(Take take, int string, List<CleanNote> notes, boolean[] channelsDone) {
        List<Event> events = new ArrayList<>();
        for (CleanNote clean : notes) {
            TakeNote note = clean.note();
            int channel = note.channel() - 1;
            events.add(new Event(
                    note.onTick(), Turn.ON, 0x90 | channel, note.note().midi(), note.velocity()));
            // a note without length must end after it starts
            Turn off = note.offTick() > note.onTick() ? Turn.OFF : Turn.ON;
            events.add(
                    new Event(note.offTick(), off, 0x80 | channel, note.note().midi(), 64));
        }
        for (int channel : notes.stream()
                .mapToInt(clean -> clean.note().channel())
                .distinct()
                .toArray()) {
            if (!channelsDone[channel]) {
                channelsDone[channel] = true;
                bends(take, notes, channel, events);
            }
        }
        events.sort(Comparator.comparingLong(Event::tick).thenComparing(Event::turn));
        MidiTrack.Builder track = new MidiTrack.Builder();
        byte[] name = ("String " + string + " " + take.tuning().open(string)).getBytes(StandardCharsets.US_ASCII);
        track.data(0, MidiTrack.META, MidiTrack.NAME, name);
        events.forEach(event -> track.message(event.tick(), event.status(), event.data1(), event.data2()));
        return track.build();
    }

    private void bends(Take take, List<CleanNote> notes, int channel, List<Event> events) {
        List<Bend> bends = new ArrayList<>();
        take.bends().stream().filter(bend -> bend.channel() == channel).forEach(bends::add);
        if (bendGlides) {
            for (CleanNote clean : notes) {
                if (clean.glide().isPresent() && clean.note().channel() == channel) {
                    glide(clean.note(), clean.glide().get(), bends);
                }
            }
        }
        if (bends.isEmpty()) {
            return;
        }
        double most =
                bends.stream().mapToDouble(bend -> Math.abs(bend.cents())).max().orElse(0);
        int range = (int) Math.min(96, Math.max(USUAL_RANGE, Math.ceil(most / 100)));
        range(channel - 1, range, events);
        bends.sort(Comparator.comparingLong(Bend::tick));
        for (Bend bend : bends) {
            int wheel = (int) Math.round(CENTRE + bend.cents() / (range * 100.0) * CENTRE);
            int held = Math.max(0, Math.min(2 * CENTRE - 1, wheel));
            events.add(new Event(bend.tick(), Turn.BEND, 0xE0 | channel - 1, held & 0x7F, held >> 7));
        }
    }

    /** Straight from the note's pitch to the next one's, and back to the middle where that starts. */
    private static void glide(TakeNote note, Glide glide, List<Bend> bends) {
        long from = Math.max(glide.fromTick(), note.onTick());
        long to = glide.toTick();
        if (to <= from || to > note.offTick()) {
            return;
        }
        bends.removeIf(bend -> bend.tick() > from && bend.tick() < to);
        long steps = Math.min(MOST_GLIDE_STEPS, to - from);
        for (long step = 1; step < steps; step++) {
            long tick = from + (to - from) * step / steps;
            bends.add(new Bend(note.channel(), tick, note.bendCents() + glide.semitones() * 100.0 * step / steps));
        }
        bends.add(new Bend(note.channel(), to, note.bendCents()));
    }

    /** Registered parameter 0,0. Source: MIDI 1.0, "Registered Parameter Numbers". */
    private static void range(int channel, int semitones, List<Event> events) {
        int[][] messages = {{101, 0}, {100, 0}, {6, semitones}, {38, 0}, {101, 127}, {100, 127}};
        for (int[] message : messages) {
            events.add(new Event(0, Turn.RANGE, 0xB0 | channel, message[0], message[1]));
        }
    }
}
