package rosinbook.notebook;

import com.fasterxml.jackson.annotation.JsonValue;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** The kinds of sheet, each with the type of its content. */
public enum Kind {
    INSTRUMENTS(Instrument.class, "instrument"),
    SYNTHS(Synth.class, "synth"),
    RIGS(Rig.class, "rig"),
    PIECES(Piece.class, "piece"),
    RECIPES(Recipe.class, "recipe"),
    SETLISTS(Setlist.class, "setlist"),
    LOG(LogEntry.class, "log entry"),
    TAKES(TakeSheet.class, "take");

    private final Class<? extends Content> contentType;
    private final String singular;

    Kind(Class<? extends Content> contentType, String singular) {
        this.contentType = contentType;
        this.singular = singular;
    }

    /** The kind with this path word, as in {@code /api/rigs}; empty if there is none. */
    public static Optional<Kind> ofPath(String path) {
        return Arrays.stream(values()).filter(kind -> kind.path().equals(path)).findFirst();
    }

    /** Lower-case word used in addresses, files and the database. */
    @JsonValue
    public String path() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** One of them, as a player says it. */
    public String singular() {
        return singular;
    }

    public Class<? extends Content> contentType() {
        return contentType;
    }
}
