package rosinbook.compare;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;

/** JSON Merge Patch (RFC 7396). */
public final class MergePatch {
    private MergePatch() {}

    /**
     * The target as the patch changes it; neither argument is altered.
     *
     * @see "RFC 7396, section 2"
     */
    public static JsonNode apply(JsonNode target, JsonNode patch) {
        if (!patch.isObject()) {
            return patch.deepCopy();
        }
        ObjectNode result = target.isObject() ? target.deepCopy() : JsonNodeFactory.instance.objectNode();
        patch.properties().forEach(member -> {
            if (member.getValue().isNull()) {
                result.remove(member.getKey());
                return;
            }
            JsonNode below = result.path(member.getKey());
            result.set(member.getKey(), apply(below, member.getValue()));
        });
        return result;
    }
}
