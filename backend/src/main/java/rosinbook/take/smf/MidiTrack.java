package rosinbook.take.smf;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The events of one track, in order of time; kept in flat arrays, so that a million events fit in a few megabytes. Immutable.
 */
public final class MidiTrack {
    /** The status byte of a meta event. */
    public static final int META = 0xFF;
    /** Meta event: microseconds per quarter note, three bytes. */
    public static final int TEMPO = 0x51;
    /** Meta event: the track ends. */
    public static final int END_OF_TRACK = 0x2F;
    /** Meta event: the track's name. */
    public static final int NAME = 0x03;

    private static final byte[] NOTHING = {};
    private static final int MOST_PAYLOADS = 1 << 24;

    private final int size;
    private final long[] ticks;
    private final int[] messages;
    private final List<byte[]> payloads;

    private MidiTrack(int size, long[] ticks, int[] messages, List<byte[]> payloads) {
        this.size = size;
        this.ticks = ticks;
        this.messages = messages;
        this.payloads = payloads;
    }

    /** How many events. */
    public int size() {
        return size;
    }

    /** When event {@code index} happens, in ticks from the start. */
    public long tick(int index) {
        return ticks[index];
    }

    /** The status byte: 0x80 to 0xEF for channel messages (the low four bits are the channel), 0xF0, 0xF7 or {@link #META}. */
    public int status(int index) {
        return messages[index] & 0xFF;
    }

    /** The message without its channel: 0x80, 0x90 … 0xE0, or 0xF0 for everything that has none. */
    public int command(int index) {
        return messages[index] & 0xF0;
    }

    /** The channel of a channel message, 0 to 15. */
    public int channel(int index) {
        return messages[index] & 0x0F;
    }

    /** First data byte of a channel message, 0 to 127; the kind of a meta event; 0 for system exclusive. */
    public int data1(int index) {
        return status(index) < 0xF0 ? messages[index] >> 8 & 0x7F : payloads.get(messages[index] >>> 8)[0];
    }

    /** Second data byte of a channel message, 0 to 127; 0 if it has only one. */
    public int data2(int index) {
        return status(index) < 0xF0 ? messages[index] >> 16 & 0x7F : 0;
    }

    /** The bytes a meta or system exclusive event carries; empty for channel messages. */
    public byte[] payload(int index) {
        if (status(index) < 0xF0) {
            return NOTHING;
        }
        byte[] kindAndPayload = payloads.get(messages[index] >>> 8);
        return Arrays.copyOfRange(kindAndPayload, 1, kindAndPayload.length);
    }

    /** When the last event happens; 0 for an empty track. */
    public long endTick() {
        return size == 0 ? 0 : ticks[size - 1];
    }

    /** Collects events in order of time. Not safe for use by several threads. */
    public static final class Builder {
        private int size;
        private long[] ticks = new long[16];
        private int[] messages = new int[16];
        private final List<byte[]> payloads = new ArrayList<>();

        /** Adds a channel message; returns this. */
        public Builder message(long tick, int status, int data1, int data2) {
            put(tick, status | data1 << 8 | data2 << 16);
            return this;
        }

        /**
         * Adds a meta event (status {@link MidiTrack#META}, kind 0 to 127) or system exclusive (kind 0); returns this.
         *
         * @throws IllegalArgumentException at the 16 777 217th of them in one track
         */
        public Builder data(long tick, int status, int kind, byte... payload) {
            if (payloads.size() == MOST_PAYLOADS) {
                throw new IllegalArgumentException("more than " + MOST_PAYLOADS + " meta events in one track");
            }
            put(tick, status | payloads.size() << 8);
            byte[] kindAndPayload = new byte[payload.length + 1];
            kindAndPayload[0] = (byte) kind;
            System.arraycopy(payload, 0, kindAndPayload, 1, payload.length);
            payloads.add(kindAndPayload);
            return this;
        }

        /** The track as collected so far. */
        public MidiTrack build() {
            return new MidiTrack(
                    size, Arrays.copyOf(ticks, size), Arrays.copyOf(messages, size), List.copyOf(payloads));
        }

        private void put(long tick, int message) {
            if (size > 0 && tick < ticks[size - 1]) {
                throw new IllegalArgumentException("tick " + tick + " is before the last event's " + ticks[size - 1]);
            }
            if (size == ticks.length) {
                ticks = Arrays.copyOf(ticks, size * 2);
                messages = Arrays.copyOf(messages, size * 2);
            }
            ticks[size] = tick;
            messages[size++] = message;
        }
    }
}
