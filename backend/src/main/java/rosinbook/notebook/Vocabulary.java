package rosinbook.notebook;

import java.util.Map;

/**
 * A synth's own words: what its straight sound, its voices and its effects can be set to. Recipes may hold values
 * outside it; those are kept and flagged.
 *
 * @param straight parameters of the straight sound
 * @param voice parameters of each voice
 * @param effects kinds of effect, each with its own parameters
 */
public record Vocabulary(
        Map<String, Parameter> straight, Map<String, Parameter> voice, Map<String, EffectType> effects) {
    /** A synth of which nothing has been described yet. */
    public static final Vocabulary EMPTY = new Vocabulary(null, null, null);

    public Vocabulary {
        straight = Require.keyed("straight", straight, 100);
        voice = Require.keyed("voice", voice, 200);
        effects = Require.keyed("effects", effects, 100);
    }

    /** One kind of effect. */
    public record EffectType(String label, Map<String, Parameter> parameters) {
        public EffectType {
            label = Require.title("label", label);
            parameters = Require.keyed("parameters", parameters, 100);
        }
    }
}
