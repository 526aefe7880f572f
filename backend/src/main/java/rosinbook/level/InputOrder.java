package rosinbook.level;

import java.util.HashSet;
import java.util.List;
import java.util.stream.IntStream;

/** Which input hears which string. */
final class InputOrder {
    private InputOrder() {}

    /** Input k hears string k. */
    static List<Integer> straight(int strings) {
        return IntStream.rangeClosed(1, strings).boxed().toList();
    }

    /** @throws IllegalArgumentException if a string's input does not exist or two strings share one */
    static void require(List<Integer> inputOfString, int inputs) {
        if (inputs < 2 || inputs > WavFormat.MAX_CHANNELS) {
            throw new IllegalArgumentException(inputs + " inputs; 2 to " + WavFormat.MAX_CHANNELS + " can be compared");
        }
        if (inputOfString.isEmpty() || inputOfString.size() > inputs) {
            throw new IllegalArgumentException(inputOfString.size() + " strings for " + inputs
                    + " inputs; every string needs an input of its own");
        }
        for (int input : inputOfString) {
            if (input < 1 || input > inputs) {
                throw new IllegalArgumentException(
                        "a string is on input " + input + ", but there are inputs 1 to " + inputs);
            }
        }
        if (new HashSet<>(inputOfString).size() < inputOfString.size()) {
            throw new IllegalArgumentException(
                    "two strings share an input in " + inputOfString + "; every string needs its own");
        }
    }
}
