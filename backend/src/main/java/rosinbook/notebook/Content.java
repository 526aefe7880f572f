package rosinbook.notebook;

import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;

/** What one revision of a sheet says. Every implementation is immutable and valid. */
public sealed interface Content permits Instrument, Synth, Rig, Piece, Recipe, Setlist, LogEntry, TakeSheet {
    /** Name in lists, 1 to 200 characters. */
    String title();

    /** The other sheets it names, by the place (JSON Pointer) where it names them. */
    default Map<String, Link> links() {
        return Map.of();
    }

    /** Words besides the title that a search should find. */
    default Stream<String> searchWords() {
        return Stream.empty();
    }

    /** Tags to browse by. */
    default Set<String> styles() {
        return Set.of();
    }

    /** The day it belongs to, for kinds that have one. */
    default Optional<LocalDate> day() {
        return Optional.empty();
    }

    /** The files it names. */
    default Set<Blob> blobs() {
        return Set.of();
    }

    /** Whether it is a set that was played. */
    default boolean played() {
        return false;
    }

    /**
     * One sheet naming another.
     *
     * @param relation what the other is to this one
     * @param kind what kind the other must be
     */
    record Link(Relation relation, Kind kind, Reference to) {
        static Link of(Relation relation, Kind kind, Reference to) {
            return new Link(relation, kind, to);
        }

        static Link of(Relation relation, Kind kind, UUID id) {
            return new Link(relation, kind, Reference.newest(id));
        }
    }

    /** What a named sheet is to the one that names it. */
    enum Relation {
        INSTRUMENT,
        SYNTH,
        RIG,
        PIECE,
        RECIPE,
        FOLLOWS,
        ABOUT
    }
}
