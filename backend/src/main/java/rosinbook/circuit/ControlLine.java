package rosinbook.circuit;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import com.fasterxml.jackson.databind.node.ObjectNode;

public record ControlLine(@JsonValue ObjectNode json) {
    @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
    public static ControlLine of(ObjectNode json) {
        return new ControlLine(json);
    }
}
