package rosinbook.level;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import rosinbook.pitch.Note;

/**
 * A made-up recording of the exercise, with its truth: sawtooth-like tones with slow unsteadiness, a scratch at the start of
 * each stroke, strings that ring on, a leak matrix, noise, hum and a constant offset, all from one seed.
 */
final class BowedStrings {
    final int sampleRate;
    final List<Note> openNotes;
    final double[][] leakDb;
    final List<Segment> strokes = new ArrayList<>();
    final List<Double> strokeDbfs = new ArrayList<>();
    double pauseSeconds = 0.15;
    double noiseDbfs = -72;
    double humDbfs = Double.NEGATIVE_INFINITY;
    int mainsHertz = 50;
    double offset;
    double[] inputGainDb;
    private final Random random;

    BowedStrings(long seed, int sampleRate, String... openNotes) {
        this.sampleRate = sampleRate;
        this.openNotes = Arrays.stream(openNotes).map(Note::parse).toList();
        random = new Random(seed);
        int strings = openNotes.length;
        leakDb = new double[strings][strings];
        inputGainDb = new double[strings];
        for (int string = 0; string < strings; string++) {
            for (int input = 0; input < strings; input++) {
                leakDb[string][input] =
                        string == input ? 0 : -16 - 4 * Math.abs(string - input) - 6 * random.nextDouble();
            }
        }
    }

    /** Channel k is input k. */
    double[][] play() {
        double at = 0.5;
        for (int string = 1; string <= openNotes.size(); string++) {
            double loud = -14 + 3 * random.nextDouble();
            for (Loudness loudness : Loudness.values()) {
                double seconds = 0.5 + 0.5 * random.nextDouble();
                strokes.add(new Segment(string, at, at + seconds, loudness));
                strokeDbfs.add(loud - new double[] {12, 6, 0}[loudness.ordinal()] + 2 * random.nextDouble() - 1);
                at += seconds + pauseSeconds;
            }
        }
        double[][] inputs = background((int) ((at + 0.5) * sampleRate));
        for (int i = 0; i < strokes.size(); i++) {
            add(inputs, strokes.get(i), strokeDbfs.get(i));
        }
        return inputs;
    }

    /** The true leak of a string into an input, in dB against its own input, with the inputs' gains in it. */
    double leakDb(int string, int input) {
        return leakDb[string][input] + inputGainDb[input] - inputGainDb[string];
    }

    private double[][] background(int frames) {
        double[][] inputs = new double[openNotes.size()][frames];
        for (double[] input : inputs) {
            double phase = 6 * random.nextDouble();
            for (int i = 0; i < frames; i++) {
                double hum = Math.sin(2 * Math.PI * mainsHertz * i / sampleRate + phase);
                input[i] = offset
                        + random.nextGaussian() * Math.pow(10, noiseDbfs / 20)
                        + hum * Math.sqrt(2) * Math.pow(10, humDbfs / 20);
            }
        }
        return inputs;
    }

    private void add(double[][] inputs, Segment stroke, double dbfs) {
        int from = (int) Math.round(stroke.fromSeconds() * sampleRate);
        int frames = (int) Math.round((stroke.toSeconds() - stroke.fromSeconds()) * sampleRate);
        double[] tone = tone(openNotes.get(stroke.string() - 1).hertz(440), frames);
        double scale = Math.pow(10, dbfs / 20) / steadyRms(tone, frames);
        for (int input = 0; input < inputs.length; input++) {
            double gain = scale * Math.pow(10, (leakDb[stroke.string() - 1][input] + inputGainDb[input]) / 20);
            for (int i = 0; i < tone.length && from + i < inputs[input].length; i++) {
                inputs[input][from + i] += gain * tone[i];
            }
            double scratch = Math.pow(10, (dbfs - 24 - 10 * random.nextDouble()) / 20);
            for (int i = 0; i < sampleRate / 50; i++) {
                inputs[input][from + i] += scratch * random.nextGaussian();
            }
        }
    }

    /** The stroke and a tenth of a second of ringing after it. */
    private double[] tone(double hertz, int frames) {
        double[] tone = new double[frames + sampleRate / 10];
        int partials = (int) Math.max(1, Math.min(12, 0.4 * sampleRate / hertz));
        double[] phases = random.doubles(partials, 0, 6).toArray();
        double swell = 2 + 4 * random.nextDouble();
        for (int i = 0; i < tone.length; i++) {
            double seconds = (double) i / sampleRate;
            double phase = 2 * Math.PI * (hertz * seconds + 0.1 * Math.sin(2 * Math.PI * 5.5 * seconds));
            double sum = 0;
            for (int h = 1; h <= partials; h++) {
                sum += Math.sin(h * phase + phases[h - 1]) / h;
            }
            double unsteady = Math.pow(10, 3 * Math.sin(swell * seconds * 2 * Math.PI) / 20);
            double attack = Math.min(1, seconds / 0.06);
            double after = i < frames ? 1 : Math.exp(-(i - frames) / (0.012 * sampleRate));
            tone[i] = sum * unsteady * attack * after;
        }
        return tone;
    }

    private double steadyRms(double[] tone, int frames) {
        double sum = 0;
        int from = (int) (0.15 * sampleRate);
        int to = frames - (int) (0.04 * sampleRate);
        for (int i = from; i < to; i++) {
            sum += tone[i] * tone[i];
        }
        return Math.sqrt(sum / (to - from));
    }
}
