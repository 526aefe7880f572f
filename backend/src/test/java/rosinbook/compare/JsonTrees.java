package rosinbook.compare;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.BooleanNode;
import com.fasterxml.jackson.databind.node.IntNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;

/** Random JSON objects without nulls, with few names so that two of them often touch. */
public final class JsonTrees {
    private JsonTrees() {}

    public static Arbitrary<ObjectNode> objects() {
        return objects(3);
    }

    private static Arbitrary<ObjectNode> objects(int depth) {
        Arbitrary<String> names = Arbitraries.of("a", "b", "c~d", "e/f", "");
        return Arbitraries.maps(names, values(depth)).ofMaxSize(4).map(JsonTrees::object);
    }

    private static Arbitrary<JsonNode> values(int depth) {
        Arbitrary<JsonNode> plain = Arbitraries.oneOf(
                Arbitraries.integers().between(-3, 3).map(IntNode::valueOf),
                Arbitraries.of("", "x", "ü").map(TextNode::valueOf),
                Arbitraries.of(true, false).map(BooleanNode::valueOf),
                Arbitraries.integers().between(0, 2).list().ofMaxSize(3).map(numbers -> {
                    var array = JsonNodeFactory.instance.arrayNode();
                    numbers.forEach(array::add);
                    return array;
                }));
        return depth == 0 ? plain : Arbitraries.oneOf(plain, objects(depth - 1).map(object -> object));
    }

    private static ObjectNode object(Map<String, JsonNode> members) {
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        members.forEach(object::set);
        return object;
    }
}
