package rosinbook.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Makes good input odd, by a seed. */
public final class Odd {
    private static final List<String> WORDS = List.of(
            "",
            " ",
            "x",
            "0",
            "-1",
            "1",
            "1e400",
            "NaN",
            "99999999999999999999",
            "true",
            "null",
            "E5",
            "H9",
            "G#-1",
            "dotted eighth",
            "2026-11-12",
            "2026-02-30",
            "+999999999-12-31",
            "0000-00-00",
            "2026-11-12T20:00:00Z",
            "00000000-0000-0000-0000-000000000000",
            "1-1-1-1-1",
            "00000000-0000-0000-0000-000000000000@1",
            "@",
            "@0",
            "<script>alert(1)</script>",
            "${jndi:x}",
            "%",
            "%00",
            "%2e%2e%2f",
            "_",
            "'; DROP TABLE sheet; --",
            "\\",
            "\"",
            "\u202e",
            "\ud83c\udfbb",
            "\ufeff",
            "\u00df",
            "\u0130",
            "~1",
            "~",
            "a/b",
            "..",
            "../..",
            "\u0001",
            "\t",
            "\n",
            "1,2,3,4",
            "10:-44,20:-38",
            "GHOST_START:-5",
            ":",
            ",",
            "\u00e9".repeat(300),
            "a".repeat(21_000));

    private final Random random;

    public Odd(long seed) {
        this.random = new Random(seed);
    }

    /** 0 to {@code below} - 1. */
    public int up(int below) {
        return random.nextInt(below);
    }

    public boolean once(int outOf) {
        return random.nextInt(outOf) == 0;
    }

    public <T> T any(List<T> things) {
        return things.get(random.nextInt(things.size()));
    }

    public String word() {
        if (once(4)) {
            StringBuilder text = new StringBuilder();
            for (int i = up(30); i > 0; i--) {
                text.appendCodePoint(once(3) ? up(0xD800) : up(128));
            }
            return text.toString();
        }
        return any(WORDS);
    }

    private JsonNode leaf() {
        JsonNodeFactory make = JsonNodeFactory.instance;
        return switch (up(8)) {
            case 0 -> make.nullNode();
            case 1 -> make.booleanNode(random.nextBoolean());
            case 2 -> make.numberNode(random.nextInt());
            case 3 -> make.numberNode(up(20) - 3);
            case 4 -> make.numberNode(Double.longBitsToDouble(random.nextLong()));
            case 5 -> make.numberNode(new java.math.BigInteger(up(120) + 1, random));
            default -> make.textNode(word());
        };
    }

    public JsonNode json(int depth) {
        if (depth == 0 || once(2)) {
            return leaf();
        }
        if (once(2)) {
            ArrayNode list = JsonNodeFactory.instance.arrayNode();
            for (int i = up(4); i > 0; i--) {
                list.add(json(depth - 1));
            }
            return list;
        }
        ObjectNode object = JsonNodeFactory.instance.objectNode();
        for (int i = up(4); i > 0; i--) {
            object.set(word(), json(depth - 1));
        }
        return object;
    }

    /** Changes one to three places of a JSON tree: another value, a value of elsewhere, none, twice, or one too many. */
    public JsonNode changed(JsonNode good) {
        JsonNode tree = good.deepCopy();
        for (int i = up(3); i >= 0; i--) {
            List<Runnable> places = new ArrayList<>();
            List<JsonNode> values = new ArrayList<>();
            collect(tree, places, values);
            if (!places.isEmpty()) {
                any(places).run();
            }
        }
        return tree;
    }

    private void collect(JsonNode node, List<Runnable> places, List<JsonNode> values) {
        values.add(node);
        if (node instanceof ObjectNode object) {
            object.properties().forEach(member -> {
                String name = member.getKey();
                places.add(
                        () -> object.set(name, once(2) ? json(2) : any(values).deepCopy()));
                places.add(() -> object.remove(name));
                places.add(() -> object.set(name, near(object.get(name))));
                collect(member.getValue(), places, values);
            });
            places.add(() -> object.set(word(), once(2) ? json(2) : any(values).deepCopy()));
        }
        if (node instanceof ArrayNode array) {
            for (int i = 0; i < array.size(); i++) {
                int index = i;
                places.add(() -> {
                    if (index < array.size()) {
                        array.set(index, json(2));
                    }
                });
                places.add(() -> array.add(any(values).deepCopy()));
                collect(array.get(i), places, values);
            }
        }
    }

    /** A value close to a good one. */
    private JsonNode near(JsonNode good) {
        JsonNodeFactory make = JsonNodeFactory.instance;
        if (good == null) {
            return make.nullNode();
        }
        if (good.isNumber()) {
            double number = good.doubleValue();
            return make.numberNode(any(List.of(
                    -number,
                    number + 1,
                    number - 1,
                    number * 1e9,
                    number / 1e9,
                    0.0,
                    -0.0,
                    number + 0.5,
                    1e308,
                    Double.MIN_VALUE)));
        }
        if (good.isTextual()) {
            String text = good.textValue();
            int at = text.isEmpty() ? 0 : up(text.length());
            return make.textNode(
                    switch (up(4)) {
                        case 0 -> text.substring(0, at);
                        case 1 -> text.substring(0, at) + word() + text.substring(at);
                        case 2 -> text.repeat(1 + up(40));
                        default -> text.toUpperCase(java.util.Locale.ROOT);
                    });
        }
        return json(1);
    }

    /** Changes some bytes: flips, extremes, numbers that lie, pieces cut out, doubled or put elsewhere. */
    public byte[] changed(byte[] good) {
        byte[] bytes = good.clone();
        for (int i = up(6); i >= 0 && bytes.length > 4; i--) {
            int at = once(2) ? up(Math.min(bytes.length, 120)) : up(bytes.length);
            switch (up(7)) {
                case 0 -> bytes[at] ^= (byte) (1 << up(8));
                case 1 -> bytes[at] = any(List.of((byte) 0, (byte) 0xFF, (byte) 0x7F, (byte) 0x80));
                case 2 -> bytes[at] = (byte) random.nextInt();
                case 3 -> Arrays.fill(bytes, at, Math.min(bytes.length, at + 4), once(2) ? (byte) 0xFF : 0x7F);
                case 4 -> bytes = Arrays.copyOf(bytes, at);
                case 5 -> {
                    int length = Math.min(up(200), bytes.length - at);
                    int to = up(bytes.length - length + 1);
                    System.arraycopy(bytes, at, bytes, to, length);
                }
                default -> {
                    int length = Math.min(up(200), bytes.length - at);
                    byte[] longer = Arrays.copyOf(bytes, bytes.length + length);
                    System.arraycopy(bytes, at, longer, at + length, bytes.length - at);
                    bytes = longer;
                }
            }
        }
        return bytes;
    }

    /** Any text as it stands in an address. */
    public static String encoded(String text) {
        return java.net.URLEncoder.encode(text, StandardCharsets.UTF_8).replace("+", "%20");
    }
}
