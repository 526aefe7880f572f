package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;

/**
 * The settings for a piece, or a starting point with no piece.
 *
 * @param piece what it is for; absent for a starting point
 * @param synth whose vocabulary its settings use; absent if it has none
 * @param follows the starting point's exact revision it builds on; absent if it stands alone
 * @param settings when it follows nothing, whole {@link RecipeSettings}; otherwise a JSON Merge Patch (RFC 7396) over the
 *     starting point's settings, holding only what differs
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Recipe(String title, UUID piece, UUID synth, Reference follows, ObjectNode settings) implements Content {
    public Recipe {
        title = Require.title("title", title);
        Require.present("settings", settings);
        if (follows != null && piece == null) {
            throw new IllegalArgumentException(
                    "follows is set although there is no piece; a starting point stands alone");
        }
        settings = follows == null ? wholeSettings(settings) : settings.deepCopy();
    }

    private static ObjectNode wholeSettings(ObjectNode given) {
        return ContentJson.tree(ContentJson.read("settings", given, RecipeSettings.class));
    }

    /** Whether it is something to build on: for no piece. */
    public boolean isStartingPoint() {
        return piece == null;
    }

    /** A copy, since JSON trees can be changed. */
    @Override
    public ObjectNode settings() {
        return settings.deepCopy();
    }

    Recipe following(Reference startingPoint) {
        return new Recipe(title, piece, synth, startingPoint, settings);
    }

    @Override
    public Map<String, Link> links() {
        Map<String, Link> links = new LinkedHashMap<>();
        if (piece != null) {
            links.put("/piece", Link.of(Relation.PIECE, Kind.PIECES, piece));
        }
        if (synth != null) {
            links.put("/synth", Link.of(Relation.SYNTH, Kind.SYNTHS, synth));
        }
        if (follows != null) {
            links.put("/follows", Link.of(Relation.FOLLOWS, Kind.RECIPES, follows));
        }
        return links;
    }

    @Override
    public Stream<String> searchWords() {
        return Stream.of(
                settings.path("notes").asText(""), settings.path("slot").asText(""));
    }
}
