package rosinbook.web;

import io.javalin.http.Context;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.TakeSheet;
import rosinbook.take.Cleaner;
import rosinbook.take.Cleaning;
import rosinbook.take.Exercise;
import rosinbook.take.StringLayout;
import rosinbook.take.Take;
import rosinbook.take.TakeReader;
import rosinbook.take.TakeReport;
import rosinbook.take.Thresholds;
import rosinbook.take.Tuning;
import rosinbook.take.smf.MidiFormatException;

/**
 * How a file is to be read and judged.
 *
 * @param exerciseBpm the exercise's tempo, if that was played
 * @param refused ids of faults to leave as they are
 */
record TakeReading(TakeReader reader, Thresholds thresholds, List<String> refused, Optional<Double> exerciseBpm) {
    private static final Set<String> MEDIA_TYPES = Set.of("audio/midi", "audio/mid", "audio/x-midi", "audio/sp-midi");

    /** Guesses everything, and goes by the usual figures. */
    static final TakeReading GUESSING =
            new TakeReading(TakeReader.GUESSING, Thresholds.STANDARD, List.of(), Optional.empty());

    static TakeReading of(TakeSheet sheet) {
        return new TakeReading(
                sheet.reader(),
                sheet.figures(),
                List.copyOf(sheet.refused().keySet()),
                Optional.ofNullable(sheet.exercise()).map(TakeSheet.Exercise::tempoBpm));
    }

    /** From the query; what is not said is guessed. */
    static TakeReading of(Context exchange) {
        Optional<Tuning> tuning = Requests.text(exchange, "strings").map(Tuning::parse);
        int base = Requests.queryNumber(exchange, "baseChannel", 0);
        if (base > 16) {
            throw new IllegalArgumentException("baseChannel is " + base + "; give 1 to 16");
        }
        TakeReader reader = new TakeReader(
                tuning,
                base == 0 ? OptionalInt.empty() : OptionalInt.of(base),
                Requests.text(exchange, "by").map(TakeReading::by),
                Requests.text(exchange, "highestFirst").map("true"::equals));
        List<String> refused = List.of(
                Optional.ofNullable(exchange.queryParam("refused")).orElse("").split(","));
        Limit.REFUSED_REPAIRS.check(refused.size());
        return new TakeReading(
                reader,
                TakeSheet.moved(figures(Requests.text(exchange, "thresholds").orElse(""))),
                refused,
                Requests.text(exchange, "exercise").map(text -> Requests.decimal("exercise", text)));
    }

    private static StringLayout.By by(String text) {
        return switch (text) {
            case "channel" -> StringLayout.By.CHANNEL;
            case "track" -> StringLayout.By.TRACK;
            case "nothing" -> StringLayout.By.NOTHING;
            default -> throw new IllegalArgumentException("by is none of channel, track and nothing");
        };
    }

    /** {@code GHOST_START:-5,TOUCHING:0.05}. */
    private static Map<String, Double> figures(String text) {
        Map<String, Double> figures = new HashMap<>();
        for (String entry : text.split(",", 200)) {
            if (entry.isBlank()) {
                continue;
            }
            String[] parts = entry.split(":", 2);
            if (parts.length < 2) {
                throw new IllegalArgumentException("thresholds is not of the form NAME:FIGURE,NAME:FIGURE");
            }
            figures.put(parts[0].strip(), Requests.decimal("thresholds/" + parts[0].strip(), parts[1]));
        }
        return figures;
    }

    /** A MIDI file in the body. */
    static byte[] midi(Context exchange) {
        if (!MEDIA_TYPES.contains(Requests.mediaType(exchange))) {
            throw Requests.wrongMediaType("Send a MIDI file, with Content-Type: audio/midi.");
        }
        return Body.whole(exchange, Limit.MIDI_BYTES);
    }

    /** The file as a take. */
    Take read(byte[] bytes) {
        try {
            return reader.read(bytes);
        } catch (MidiFormatException broken) {
            Problem problem = new Problem(
                    422,
                    "unreadable-midi",
                    "This is not a MIDI file that can be read",
                    "At " + broken.getMessage() + ". Save it once more as a Standard MIDI File and try again.");
            problem.details().put("byteOffset", broken.byteOffset());
            throw problem;
        } catch (PastLimit tooMuch) {
            throw tooMuch;
        } catch (IllegalArgumentException unfit) {
            throw new Problem(422, "unfit-take", "This file does not fit what was said about it", unfit.getMessage());
        }
    }

    Cleaning clean(byte[] bytes) {
        return new Cleaner(thresholds).clean(read(bytes), refused);
    }

    TakeReport report(Cleaning cleaning) {
        Take take = cleaning.take();
        return TakeReport.of(
                cleaning, exerciseBpm.map(bpm -> Exercise.of(take.tuning(), bpm).truthAlong(take)));
    }
}
