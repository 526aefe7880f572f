package rosinbook.level;

/**
 * The mains and their harmonics in one input, listened to in the quiet parts only, because the harmonics lie close to open
 * strings (100 Hz is 35 cents above G2).
 *
 * @param mainsHertz 50 or 60
 * @param power mean square of all harmonics that stand out of the noise beside them; if none does, what could hide in it
 * @param standsOut whether any harmonic stands out of the noise beside it
 * @param strongestHarmonic 1 for the mains frequency itself; 0 if none stands out
 */
record Hum(int mainsHertz, double power, boolean standsOut, int strongestHarmonic) {
    /** 1 kHz at 50 Hz mains; buzz above that is heard in the noise floor. */
    static final int HARMONICS = 20;

    private static final int AVERAGED_RATE = 8_000;
    private static final double[] BESIDE_HERTZ = {-20, -10, 10, 20};

    /** Sums what one input has at every harmonic and beside it, block by block. */
    static final class Listener {
        private final int mainsHertz;
        private final int sampleRate;
        /** How many samples are averaged into one first; the harmonics are slow, and most of the time would go into them. */
        private final int averaged;

        private final double[] at = new double[HARMONICS];
        private final double[] beside = new double[HARMONICS];
        private int blocks;

        Listener(int mainsHertz, int sampleRate) {
            this.mainsHertz = mainsHertz;
            this.sampleRate = sampleRate;
            this.averaged = Math.max(1, sampleRate / AVERAGED_RATE);
        }

        /** @param count samples in the block, a tenth or fifth of a second, so that it holds whole periods of all */
        void add(float[] samples, int count) {
            float[] slow = averagedWithoutMean(samples, count);
            for (int h = 0; h < harmonics(); h++) {
                double hertz = (h + 1.0) * mainsHertz;
                at[h] += power(slow, hertz);
                for (double away : BESIDE_HERTZ) {
                    beside[h] += power(slow, hertz + away) / BESIDE_HERTZ.length;
                }
            }
            blocks++;
        }

        /** Makes good what averaging takes off: a mean of n samples has the gain sin(πfn/rate) ÷ (n·sin(πf/rate)). */
        private double power(float[] slow, double hertz) {
            double angle = Math.PI * hertz / sampleRate;
            double gain = Math.sin(averaged * angle) / (averaged * Math.sin(angle));
            return Goertzel.power(slow, 0, slow.length, hertz, (double) sampleRate / averaged) / (gain * gain);
        }

        Hum heard() {
            double hum = 0;
            double hidden = 0;
            int strongest = -1;
            for (int h = 0; h < harmonics(); h++) {
                hidden += beside[h] / blocks;
                if (at[h] >= standsOut() * beside[h] && at[h] > 0) {
                    hum += (at[h] - beside[h]) / blocks;
                    strongest = strongest < 0 || at[h] > at[strongest] ? h : strongest;
                }
            }
            boolean standsOut = strongest >= 0;
            return new Hum(mainsHertz, standsOut ? hum : hidden, standsOut, strongest + 1);
        }

        /**
         * How many times the noise beside it a harmonic must have, so that noise alone passes less than once in 2000 times.
         * The two are sums of 2 and 8 squares per block, so their ratio follows F(2n, 8n); 3 + 20/n lies on or above its
         * 0.9995 quantile for every n (22.7 at 1, 9.1 at 2, 2.8 at 10).
         */
        private double standsOut() {
            return 3 + 20.0 / blocks;
        }

        private int harmonics() {
            return (int) Math.min(HARMONICS, 0.45 * sampleRate / mainsHertz);
        }

        private float[] averagedWithoutMean(float[] samples, int count) {
            float[] slow = new float[count / averaged];
            double mean = 0;
            for (int i = 0; i < slow.length; i++) {
                double sum = 0;
                for (int k = 0; k < averaged; k++) {
                    sum += samples[i * averaged + k];
                }
                slow[i] = (float) (sum / averaged);
                mean += slow[i] / (double) slow.length;
            }
            for (int i = 0; i < slow.length; i++) {
                slow[i] -= (float) mean;
            }
            return slow;
        }
    }
}
