package rosinbook.share;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rosinbook.notebook.Kind;
import rosinbook.readout.RecipeReadout;

/**
 * What a share shows, ready to read. Not what the player calls it: that is for their own list.
 *
 * @param revision of the shared sheet
 * @param asOf when that revision was saved
 * @param keptUpToDate whether it shows whatever is newest
 */
@JsonInclude(JsonInclude.Include.NON_ABSENT)
public record ShareView(
        Kind kind,
        String title,
        int revision,
        Instant asOf,
        boolean keptUpToDate,
        Optional<SetView> setlist,
        Optional<RecipeView> recipe,
        Optional<RigView> rig) {
    /** A set with everything that is played in it. */
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
    public record SetView(
            LocalDate date, String place, boolean played, String notes, Optional<RigView> rig, List<ItemView> items) {}

    /** One piece of a set; {@code rig} only where it differs from the set's. */
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
    public record ItemView(
            int position,
            String title,
            String composer,
            Optional<Double> tempoBpm,
            String meter,
            String key,
            String note,
            Optional<RecipeView> recipe,
            Optional<RigView> rig) {}

    /** A sound, resolved. */
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
    public record RecipeView(
            String title, int revision, Optional<String> startingPoint, List<RecipeReadout.Line> lines) {}

    /** A rig. */
    public record RigView(
            String title, int revision, String instrument, String synth, List<StringView> strings, String notes) {}

    /** One string of a rig. */
    @JsonInclude(JsonInclude.Include.NON_ABSENT)
    public record StringView(
            int string,
            Optional<String> note,
            Optional<Integer> input,
            Optional<Double> sensitivity,
            double trimDecibels) {}
}
