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

    /**
     * The smallest patch that turns one object into another.
     *
     * @throws IllegalArgumentException if the newer object holds a null, which a merge patch cannot express (RFC 7396,
     *     section 1)
     */
    public static ObjectNode between(ObjectNode was, ObjectNode now) {
        ObjectNode patch = JsonNodeFactory.instance.objectNode();
        was.fieldNames().forEachRemaining(name -> {
            if (!now.has(name)) {
                patch.putNull(name);
            }
        });
        now.properties().forEach(member -> {
            JsonNode older = was.path(member.getKey());
            JsonNode newer = member.getValue();
            refuseNull(newer);
            if (older.isObject() && newer.isObject()) {
                ObjectNode below = between((ObjectNode) older, (ObjectNode) newer);
                if (!below.isEmpty()) {
                    patch.set(member.getKey(), below);
                }
            } else if (!older.equals(newer)) {
                patch.set(member.getKey(), newer.deepCopy());
            }
        });
        return patch;
    }

    private static void refuseNull(JsonNode node) {
        if (node.isNull()) {
            throw new IllegalArgumentException("a merge patch cannot set a member to null (RFC 7396, section 1)");
        }
        if (node.isObject()) {
            node.forEach(MergePatch::refuseNull);
        }
    }
}
