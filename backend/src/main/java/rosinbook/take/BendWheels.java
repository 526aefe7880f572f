package rosinbook.take;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rosinbook.limit.Limit;
import rosinbook.take.smf.MidiFile;
import rosinbook.take.smf.MidiTrack;

/**
 * Where the pitch bend of each channel stands at any tick. The range is RPN 0,0 (coarse semitones, fine cents); two semitones
 * until it is set. Source: MIDI 1.0, "Pitch Bend Change" and "Registered Parameter Numbers".
 */
final class BendWheels {
    private static final int CENTRE = 0x2000;
    private static final int NO_PARAMETER = 0x3FFF;

    private final List<Bend> bends = new ArrayList<>();
    private final List<List<Bend>> byChannel = new ArrayList<>();

    private BendWheels(List<MidiTrack> tracks) {
        List<long[]> messages = new ArrayList<>();
        for (MidiTrack track : tracks) {
            for (int index = 0; index < track.size(); index++) {
                int command = track.command(index);
                if (command == 0xE0 || command == 0xB0 && isRange(track.data1(index))) {
                    Limit.BENDS.check(messages.size() + 1);
                    messages.add(
                            new long[] {track.tick(index), track.status(index), track.data1(index), track.data2(index)
                            });
                }
            }
        }
        messages.sort(Comparator.comparingLong(message -> message[0]));
        for (int channel = 1; channel <= 16; channel++) {
            byChannel.add(new ArrayList<>());
        }
        State[] states = new State[16];
        for (long[] message : messages) {
            int channel = (int) message[1] & 0x0F;
            if (states[channel] == null) {
                states[channel] = new State();
            }
            if (states[channel].take((int) message[1] & 0xF0, (int) message[2], (int) message[3])) {
                Bend bend = new Bend(channel + 1, message[0], states[channel].cents());
                bends.add(bend);
                byChannel.get(channel).add(bend);
            }
        }
    }

    static BendWheels of(MidiFile file) {
        return new BendWheels(file.tracks());
    }

    static BendWheels of(MidiTrack track) {
        return new BendWheels(List.of(track));
    }

    List<Bend> bends() {
        return bends;
    }

    /** Cents in force on a channel (1 to 16) at a tick, bends at that very tick included; 0 before the first. */
    double cents(int channel, long tick) {
        List<Bend> own = byChannel.get(channel - 1);
        int low = 0;
        int high = own.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (own.get(middle).tick() <= tick) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low == 0 ? 0 : own.get(low - 1).cents();
    }

    private static boolean isRange(int controller) {
        return controller == 6 || controller == 38 || controller >= 98 && controller <= 101 || controller == 121;
    }

    private static final class State {
        private int parameter = NO_PARAMETER;
        private int semitones = 2;
        private int rangeCents;
        private int wheel = CENTRE;

        /** True if the channel may sound otherwise from now on. */
        boolean take(int command, int data1, int data2) {
            if (command == 0xE0) {
                wheel = data2 << 7 | data1;
                return true;
            }
            switch (data1) {
                case 101 -> parameter = parameter & 0x7F | data2 << 7;
                case 100 -> parameter = parameter & 0x3F80 | data2;
                case 98, 99 -> parameter = NO_PARAMETER;
                case 121 -> {
                    wheel = CENTRE;
                    parameter = NO_PARAMETER;
                    return true;
                }
                case 6 -> semitones = parameter == 0 ? data2 : semitones;
                case 38 -> rangeCents = parameter == 0 ? data2 : rangeCents;
                default -> throw new IllegalStateException("controller " + data1);
            }
            return parameter == 0 && wheel != CENTRE && (data1 == 6 || data1 == 38);
        }

        double cents() {
            return (wheel - CENTRE) / (double) CENTRE * (semitones * 100 + rangeCents);
        }
    }
}
