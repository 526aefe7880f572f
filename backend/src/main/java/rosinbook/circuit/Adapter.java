package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.node.ObjectNode;

public record Adapter(@JsonValue ObjectNode json) {
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static Adapter of(ObjectNode json) {
        return new Adapter(json);
    }
}
