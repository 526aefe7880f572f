package rosinbook.readout;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import rosinbook.compare.Pointer;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Parameter;
import rosinbook.notebook.ParameterValue;
import rosinbook.notebook.Piece;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Recipes;
import rosinbook.notebook.Resolved;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Synth;
import rosinbook.notebook.Vocabulary;
import rosinbook.sound.NoteValue;

/** A resolved recipe, value by value. */
public final class RecipeReadout {
    private final Resolved resolved;
    private final Phrasing phrasing;

    private RecipeReadout(Resolved resolved, Phrasing phrasing) {
        this.resolved = resolved;
        this.phrasing = phrasing;
    }

    /**
     * Resolves a recipe's revision and reads it with its synth's newest vocabulary and its piece's newest tempo.
     *
     * @throws rosinbook.notebook.NoSuchSheet if what it follows is not there
     */
    public static RecipeReadout of(Pages pages, Revision revision) {
        return new RecipeReadout(Recipes.resolve(pages, revision), phrasing(pages, (Recipe) revision.content()));
    }

    /** The words for a recipe: its synth's vocabulary and its piece's tempo. */
    public static Phrasing phrasing(Pages pages, Recipe recipe) {
        Vocabulary vocabulary = Optional.ofNullable(recipe.synth())
                .flatMap(pages::newest)
                .map(Revision::content)
                .map(content -> ((Synth) content).vocabulary())
                .orElse(Vocabulary.EMPTY);
        OptionalDouble tempo = Optional.ofNullable(recipe.piece())
                .flatMap(pages::newest)
                .map(Revision::content)
                .map(content -> ((Piece) content).tempoBpm())
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
        return new Phrasing(Titles.in(pages), vocabulary, tempo);
    }

    /** The content of a recipe with its settings resolved, for comparing. */
    public static ObjectNode resolvedContent(Pages pages, Revision revision) {
        ObjectNode content = revision.json().deepCopy();
        content.set("settings", Recipes.resolve(pages, revision).json());
        return content;
    }

    public Resolved resolved() {
        return resolved;
    }

    /** Where a value comes from. */
    public enum From {
        PIECE,
        START;

        @com.fasterxml.jackson.annotation.JsonValue
        String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    /**
     * One value.
     *
     * @param pointer within the settings
     * @param text without unit
     * @param unusual what is unusual about it, in a sentence; absent if nothing
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Line(String pointer, List<String> where, String text, String unit, From from, String unusual) {}

    /**
     * A sheet's revision that a value comes from.
     *
     * @param from this recipe itself, or its starting point
     */
    public record Origin(From from, UUID id, String title, int revision) {}

    /** Every value, straight sound first, then the voices and the chain in their order. */
    public List<Line> lines() {
        ObjectNode settings = resolved.json();
        List<Line> lines = new ArrayList<>();
        Pointer straight = Pointer.parse("/straight");
        lines.add(line(straight.plus("on"), settings.path("straight").path("on")));
        addParameters(lines, straight, settings.path("straight"));
        for (String container : List.of("voices", "effects")) {
            JsonNode entries = settings.path(container);
            for (String key : Readout.inOrder(entries)) {
                Pointer at = Pointer.ROOT.plus(container).plus(key);
                lines.add(line(at.plus("on"), entries.path(key).path("on")));
                addParameters(lines, at, entries.path(key));
            }
        }
        for (String field : List.of("slot", "notes")) {
            if (!settings.path(field).asText("").isEmpty()) {
                lines.add(line(Pointer.ROOT.plus(field), settings.path(field)));
            }
        }
        return lines;
    }

    private void addParameters(List<Line> lines, Pointer owner, JsonNode holder) {
        Pointer at = owner.plus("parameters");
        holder.path("parameters").properties().stream()
                .sorted(Comparator.comparing((Map.Entry<String, JsonNode> entry) -> phrasing.parameter(
                                        at.plus(entry.getKey()), resolved.json())
                                .map(Parameter::order)
                                .orElse(Double.MAX_VALUE))
                        .thenComparing(Map.Entry::getKey))
                .forEach(entry -> lines.add(line(at.plus(entry.getKey()), entry.getValue())));
    }

    private Line line(Pointer at, JsonNode value) {
        return new Line(
                at.toString(),
                phrasing.where(at, resolved.json()),
                phrasing.value(at, resolved.json(), value),
                phrasing.unit(at, resolved.json(), value),
                from(at),
                objection(at, value).orElse(null));
    }

    private From from(Pointer at) {
        return resolved.isFromStartingPoint(at) ? From.START : From.PIECE;
    }

    private Optional<String> objection(Pointer at, JsonNode value) {
        if (phrasing.vocabulary().equals(Vocabulary.EMPTY) || !at.steps().contains("parameters")) {
            return Optional.empty();
        }
        Optional<Parameter> parameter = phrasing.parameter(at, resolved.json());
        if (parameter.isEmpty()) {
            return Optional.of("The synth's sheet does not know this setting");
        }
        return parameter.get().objection(ParameterValue.of(value));
    }

    /** Where each value comes from, by its pointer within the settings. */
    public Map<String, Origin> origins() {
        Map<String, Origin> origins = new LinkedHashMap<>();
        for (Line line : lines()) {
            Revision source =
                    line.from() == From.START ? resolved.startingPoint().orElseThrow() : resolved.recipe();
            origins.put(
                    line.pointer(),
                    new Origin(line.from(), source.sheetId(), source.content().title(), source.number()));
        }
        return origins;
    }

    /** Note values in milliseconds at the piece's tempo, by pointer; none without a tempo. */
    public Map<String, Double> times() {
        Map<String, Double> times = new LinkedHashMap<>();
        if (phrasing.tempoBpm().isEmpty()) {
            return times;
        }
        for (Line line : lines()) {
            JsonNode note = Pointer.parse(line.pointer()).in(resolved.json()).path("note");
            if (note.isTextual()) {
                times.put(
                        line.pointer(),
                        NoteValue.parse(note.textValue())
                                .millis(phrasing.tempoBpm().getAsDouble()));
            }
        }
        return times;
    }
}
