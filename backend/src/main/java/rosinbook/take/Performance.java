package rosinbook.take;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import rosinbook.limit.Limit;
import rosinbook.pitch.Note;
import rosinbook.take.smf.MidiFile;
import rosinbook.take.smf.MidiTrack;
import rosinbook.take.smf.TempoMap;

/**
 * What a file holds once note-ons and note-offs are paired, before strings are told apart.
 *
 * <p>The patterns of a format 2 file have no common time; they are laid end to end, each starting at 120 a minute unless it
 * says otherwise.
 */
record Performance(List<Heard> notes, List<Bend> bends, TempoMap tempoMap, int tracksWithNotes) {
    /** A note with its track's place among the tracks that hold notes. */
    record Heard(
            int track,
            int channel,
            int key,
            int velocity,
            double bendCents,
            long onTick,
            long offTick,
            boolean hanging) {
        TakeNote toNote(int string, TempoMap tempoMap) {
            double onSeconds = tempoMap.seconds(onTick);
            double offSeconds = Math.max(onSeconds, tempoMap.seconds(offTick));
            return new TakeNote(
                    0,
                    string,
                    channel,
                    new Note(key),
                    bendCents,
                    velocity,
                    onTick,
                    offTick,
                    onSeconds,
                    offSeconds,
                    hanging);
        }
    }

    static Performance of(MidiFile file) {
        return new Reading(file).performance();
    }

    private static final class Reading {
        private static final int DEFAULT_MICROS = 500_000;
        private static final int KEYS = 16 * 128;
        private final MidiFile file;
        private final List<Heard> notes = new ArrayList<>();
        private final List<Bend> bends = new ArrayList<>();
        private final List<TempoMap.Change> tempos = new ArrayList<>();
        private int tracksWithNotes;
        /** Notes that sound, by channel and key. */
        private final List<Deque<long[]>> sounding = new ArrayList<>(Collections.nCopies(KEYS, null));

        Reading(MidiFile file) {
            this.file = file;
        }

        Performance performance() {
            long shift = 0;
            long end = 0;
            for (MidiTrack track : file.tracks()) {
                end = Math.max(end, track.endTick());
            }
            BendWheels wheels = BendWheels.of(file);
            for (MidiTrack track : file.tracks()) {
                if (file.format() == 2) {
                    tempos.add(new TempoMap.Change(shift, DEFAULT_MICROS));
                    read(track, shift, track.endTick(), BendWheels.of(track));
                    shift += track.endTick();
                    continue;
                }
                read(track, 0, end, wheels);
            }
            if (file.format() != 2) {
                bends.addAll(wheels.bends());
            }
            return new Performance(notes, bends, TempoMap.of(file.division(), tempos), tracksWithNotes);
        }

        private void read(MidiTrack track, long shift, long endTick, BendWheels wheels) {
            Collections.fill(sounding, null);
            int before = notes.size();
            for (int index = 0; index < track.size(); index++) {
                long tick = track.tick(index);
                int channel = track.channel(index);
                switch (track.command(index)) {
                    case 0x90 -> {
                        int key = channel << 7 | track.data1(index);
                        if (track.data2(index) > 0) {
                            start(key, tick, track.data2(index));
                        } else {
                            end(key, tick, shift, wheels);
                        }
                    }
                    case 0x80 -> {
                        int key = channel << 7 | track.data1(index);
                        end(key, tick, shift, wheels);
                    }
                    case 0xB0 -> {
                        if (track.data1(index) == 120 || track.data1(index) >= 123) {
                            endAll(channel, tick, shift, wheels);
                        }
                    }
                    case 0xF0 -> tempo(track, index, shift);
                    default -> {
                        // programs, pressure and bends start and end no note
                    }
                }
            }
            for (int key = 0; key < KEYS; key++) {
                if (sounding.get(key) != null) {
                    for (long[] note : sounding.get(key)) {
                        add(key, note, endTick, shift, wheels, true);
                    }
                }
            }
            if (file.format() == 2) {
                wheels.bends().forEach(bend -> bends.add(new Bend(bend.channel(), bend.tick() + shift, bend.cents())));
            }
            if (notes.size() > before) {
                tracksWithNotes++;
            }
        }

        private void tempo(MidiTrack track, int index, long shift) {
            if (track.status(index) == MidiTrack.META && track.data1(index) == MidiTrack.TEMPO) {
                byte[] micros = track.payload(index);
                tempos.add(new TempoMap.Change(
                        track.tick(index) + shift,
                        (micros[0] & 0xFF) << 16 | (micros[1] & 0xFF) << 8 | micros[2] & 0xFF));
            }
        }

        private void start(int key, long tick, int velocity) {
            if (sounding.get(key) == null) {
                sounding.set(key, new ArrayDeque<>());
            }
            sounding.get(key).add(new long[] {tick, velocity});
        }

        private void end(int key, long tick, long shift, BendWheels wheels) {
            Deque<long[]> open = sounding.get(key);
            if (open != null && !open.isEmpty()) {
                add(key, open.poll(), tick, shift, wheels, false);
            }
        }

        private void endAll(int channel, long tick, long shift, BendWheels wheels) {
            for (int key = channel << 7; key < (channel + 1) << 7; key++) {
                while (sounding.get(key) != null && !sounding.get(key).isEmpty()) {
                    add(key, sounding.get(key).poll(), tick, shift, wheels, false);
                }
            }
        }

        private void add(int key, long[] note, long offTick, long shift, BendWheels wheels, boolean hanging) {
            Limit.NOTES.check(notes.size() + 1);
            int channel = (key >> 7) + 1;
            notes.add(new Heard(
                    tracksWithNotes,
                    channel,
                    key & 0x7F,
                    (int) note[1],
                    wheels.cents(channel, note[0]),
                    note[0] + shift,
                    offTick + shift,
                    hanging));
        }
    }
}
