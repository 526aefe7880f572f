package rosinbook.readout;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What a field is called, and its unit, from its name. */
final class Labels {
    private static final Map<String, String> UNITS = Map.ofEntries(
            Map.entry("Decibels", "dB"),
            Map.entry("DecibelsPerStep", "dB a step"),
            Map.entry("Hertz", "Hz"),
            Map.entry("Volts", "V"),
            Map.entry("Ohms", "Ω"),
            Map.entry("Milliamps", "mA"),
            Map.entry("Milliwatts", "mW"),
            Map.entry("Millivolts", "mV"),
            Map.entry("Picofarads", "pF"),
            Map.entry("PicofaradsPerMetre", "pF per metre"),
            Map.entry("Metres", "m"),
            Map.entry("Millis", "ms"),
            Map.entry("Bpm", "bpm"));
    private static final Map<String, String> NAMES = Map.ofEntries(
            Map.entry("decibelsPerStep", "decibels per step"),
            Map.entry("cents", "fine tuning"),
            Map.entry("note", "note"),
            Map.entry("on", "switch"),
            Map.entry("state", "state"),
            Map.entry("capacitancePicofarads", "capacitance"),
            Map.entry("cableMetres", "cable length"),
            Map.entry("cablePicofaradsPerMetre", "cable capacitance"),
            Map.entry("silence", "nothing played"),
            Map.entry("acMillivolts", "alternating"),
            Map.entry("dcVolts", "steady"),
            Map.entry("follows", "starting point"));
    private static final Map<String, String> ENTRIES = Map.ofEntries(
            Map.entry("strings", "String"),
            Map.entry("assignments", "String"),
            Map.entry("pins", "Pin"),
            Map.entry("routes", "Route"),
            Map.entry("controlLines", "Control line"),
            Map.entry("readings", "Meter reading"),
            Map.entry("probe", "Meter at pin"),
            Map.entry("bowed", "Bowed string"),
            Map.entry("positions", "Position"),
            Map.entry("thresholds", "Figure"),
            Map.entry("refused", "Left as played:"),
            Map.entry("voices", "Voice"),
            Map.entry("effects", "Effect"),
            Map.entry("items", "Piece"),
            Map.entry("about", "About"));

    private Labels() {}

    /** Unit of a field whose name ends in one; empty otherwise. */
    static String unit(String field) {
        if (field.equals("cents")) {
            return "cents";
        }
        return UNITS.entrySet().stream()
                .filter(unit -> field.endsWith(unit.getKey()) || field.equals(lowerFirst(unit.getKey())))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("");
    }

    /** {@code trimDecibels} becomes {@code trim}, {@code memorySlots} becomes {@code memory slots}. */
    static String name(String field) {
        if (NAMES.containsKey(field)) {
            return NAMES.get(field);
        }
        String bare = field;
        for (String unit : UNITS.keySet()) {
            if (bare.length() > unit.length() && bare.endsWith(unit)) {
                bare = bare.substring(0, bare.length() - unit.length());
                break;
            }
        }
        return bare.replaceAll("([a-z0-9])([A-Z])", "$1 $2").toLowerCase(Locale.ROOT);
    }

    /** What one entry of this map is called; empty if the field is no map of things with an identity. */
    static Optional<String> entryOf(String field) {
        return Optional.ofNullable(ENTRIES.get(field));
    }

    private static String lowerFirst(String text) {
        return text.substring(0, 1).toLowerCase(Locale.ROOT) + text.substring(1);
    }
}
