package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Map;

/**
 * A whole sound: what a recipe comes to once it is resolved.
 *
 * @param straight the mixed signal passed on
 * @param voices synth layers by their own id
 * @param effects the chain, by the effects' own ids
 * @param slot where the synth keeps it; may be empty
 */
public record RecipeSettings(
        StraightSound straight, Map<String, Voice> voices, Map<String, Effect> effects, String slot, String notes) {
    public RecipeSettings {
        straight = straight == null ? new StraightSound(null, null) : straight;
        voices = Require.keyed("voices", voices, 32);
        effects = Require.keyed("effects", effects, 64);
        slot = Require.limited("slot", slot == null ? "" : slot, 30);
        notes = Require.text("notes", notes);
    }

    /** The straight sound; on unless said otherwise. */
    public record StraightSound(Boolean on, Map<String, ParameterValue> parameters) {
        public StraightSound {
            on = on == null || on;
            parameters = Require.keyed("parameters", parameters, 100);
        }
    }

    /**
     * One synth layer.
     *
     * @param order place among the voices, smallest first
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Voice(String name, Double order, Boolean on, Map<String, ParameterValue> parameters) {
        public Voice {
            name = Require.title("name", name);
            order = Require.finite("order", order == null ? 0 : order);
            on = on == null || on;
            parameters = Require.keyed("parameters", parameters, 200);
        }
    }

    /**
     * One processor of the chain.
     *
     * @param type key of an effect type of the synth's vocabulary, or any word of the player's own
     * @param order place in the chain, smallest first
     */
    @JsonInclude(JsonInclude.Include.NON_NULL)
    public record Effect(String type, Double order, Boolean on, Map<String, ParameterValue> parameters) {
        public Effect {
            type = Require.title("type", type);
            order = Require.finite("order", order == null ? 0 : order);
            on = on == null || on;
            parameters = Require.keyed("parameters", parameters, 100);
        }
    }
}
