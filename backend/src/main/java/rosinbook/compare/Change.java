package rosinbook.compare;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Objects;
import java.util.Optional;

/**
 * One difference between an older and a newer document.
 *
 * @param at where
 * @param was the older value; empty if it was added
 * @param now the newer value; empty if it was left out
 */
public record Change(Pointer at, Optional<JsonNode> was, Optional<JsonNode> now) {
    /** @throws IllegalArgumentException if there is neither an older nor a newer value */
    public Change {
        Objects.requireNonNull(at, "at");
        if (was.isEmpty() && now.isEmpty()) {
            throw new IllegalArgumentException("a change needs an older or a newer value");
        }
    }
}
