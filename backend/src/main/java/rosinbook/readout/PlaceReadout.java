package rosinbook.readout;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Optional;
import rosinbook.compare.Pointer;

/**
 * Places and values of one document in words.
 *
 * @param document tells what entries are called
 */
public record PlaceReadout(Phrasing phrasing, JsonNode document) {
    /** The place in words, outermost first. */
    public List<String> where(Pointer at) {
        return phrasing.where(at, document);
    }

    /** A value with its unit; {@code nothing} if there is none, {@code left out} for a merge patch's null. */
    public String text(Pointer at, Optional<JsonNode> value) {
        if (value.isEmpty()) {
            return "nothing";
        }
        if (value.get().isNull()) {
            return "left out";
        }
        String unit = phrasing.unit(at, document, value.get());
        String text = phrasing.value(at, document, value.get());
        return unit.isEmpty() ? text : text + " " + unit;
    }
}
