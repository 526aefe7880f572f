package rosinbook.take.smf;

/** What a tick means: the last two bytes of a file's header. Source: Standard MIDI Files 1.0, "Header Chunks". */
public sealed interface Division {
    /** The two bytes as one number, 0 to 65535. */
    int toBits();

    /**
     * Ticks as a share of a quarter note.
     *
     * @param ticksPerQuarter 1 to 32767
     */
    record Metrical(int ticksPerQuarter) implements Division {
        /** @throws IllegalArgumentException if {@code ticksPerQuarter} is outside 1 to 32767 */
        public Metrical {
            if (ticksPerQuarter < 1 || ticksPerQuarter > 0x7FFF) {
                throw new IllegalArgumentException("ticksPerQuarter is " + ticksPerQuarter + "; give 1 to 32767");
            }
        }

        @Override
        public int toBits() {
            return ticksPerQuarter;
        }
    }

    /**
     * Ticks as a share of a film or video frame; tempo plays no part.
     *
     * @param frames 24, 25, 29 (which means 30 drop-frame, 30 000/1001 frames a second) or 30
     * @param ticksPerFrame 1 to 255
     */
    record Smpte(int frames, int ticksPerFrame) implements Division {
        /** @throws IllegalArgumentException if the frame rate is not one of the four, or {@code ticksPerFrame} not 1 to 255 */
        public Smpte {
            if (frames != 24 && frames != 25 && frames != 29 && frames != 30) {
                throw new IllegalArgumentException("frames is " + frames + "; give 24, 25, 29 or 30");
            }
            if (ticksPerFrame < 1 || ticksPerFrame > 255) {
                throw new IllegalArgumentException("ticksPerFrame is " + ticksPerFrame + "; give 1 to 255");
            }
        }

        /** Ticks in one second. */
        public double ticksPerSecond() {
            return (frames == 29 ? 30_000 / 1001.0 : frames) * ticksPerFrame;
        }

        @Override
        public int toBits() {
            return (-frames & 0xFF) << 8 | ticksPerFrame;
        }
    }
}
