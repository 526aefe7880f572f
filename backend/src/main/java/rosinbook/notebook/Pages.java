package rosinbook.notebook;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** One notebook's sheets, within one transaction. */
public interface Pages {
    /** Most entries that one part of a list holds. */
    int MOST_LISTED = 200;

    /** The newest revision; empty if there is no such sheet. */
    Optional<Revision> newest(UUID sheetId);

    /** The newest revision, and nobody else can save that sheet until the transaction ends. */
    Optional<Revision> newestForSaving(UUID sheetId);

    /** An exact revision; empty if there is none. */
    Optional<Revision> revision(UUID sheetId, int number);

    /** Reads these in one go, so that looking each of them up afterwards asks nothing more. Those that are not there are left out. */
    default void fetch(Collection<Reference> references) {}

    /** What was remembered under this key, if every newest revision that it was made from still is the newest. */
    default Optional<byte[]> recall(Object key) {
        return Optional.empty();
    }

    /**
     * Makes something of these pages and may remember it for later readers.
     *
     * @param key tells what is made, and of what; the notebook goes without saying
     * @param work reads only {@link #newest} and {@link #revision} if the result is to be remembered
     */
    default byte[] remember(Object key, Function<Pages, byte[]> work) {
        return work.apply(this);
    }

    /**
     * Adds a revision and brings everything that is kept beside it up to date.
     *
     * @throws IllegalStateException if that number is taken
     */
    void append(Revision revision, Content content);

    /** Sheets of a kind, newest revision each, in the order of that kind. */
    Page<Revision> list(Query query);

    /** Revisions of one sheet, newest first. */
    Page<Revision> history(UUID sheetId, int limit, Optional<Integer> below);

    /** Sheets whose newest revision names this one. */
    List<Use> usedBy(UUID sheetId);

    /** How often each style is used, by style. */
    Map<String, Integer> styles();

    /** How many sheets there are of each kind; kinds without any are absent. */
    Map<Kind, Integer> counts();

    /** The day each of these pieces or recipes was last part of a played set; those that never were are absent. */
    Map<UUID, LocalDate> lastPlayed(Collection<UUID> ids);

    /** How many sheets of {@code kind} name each of these in that relation; those without are absent. */
    Map<UUID, Integer> useCounts(Content.Relation relation, Kind kind, Collection<UUID> ids);

    /** A string's settings in each revision of a rig, by string number, oldest first. */
    Map<Integer, List<StringSetting>> stringHistory(UUID rigId);

    /** Whether this file is kept. */
    boolean holds(Blob blob);

    /** A file's bytes; empty if it is not kept. */
    Optional<byte[]> read(Blob blob);

    /** Keeps a file; one that is kept already stays as it is. */
    void keep(Blob blob, byte[] bytes);

    /** Setlists by day, of one state, within days; newest first. */
    List<Revision> setlists(Set<Boolean> played, LocalDate fromInclusive, LocalDate toInclusive, int limit);

    /** The first setlist from that day on that was not played; of a day, the one saved first. */
    Optional<Revision> firstPlanned(LocalDate fromInclusive);

    /**
     * What to list.
     *
     * @param words to look for, all of which must occur; empty for everything
     * @param style only sheets with this tag; empty for all
     * @param after a cursor from an earlier page
     * @param limit 1 to 200
     */
    record Query(Optional<Kind> kind, String words, Optional<String> style, Optional<String> after, int limit) {
        public Query {
            if (limit < 1 || limit > MOST_LISTED) {
                throw new IllegalArgumentException("limit is " + limit + "; give 1 to " + MOST_LISTED);
            }
            if (words.length() > 200) {
                throw new PastLimit(Limit.QUERY_TEXT, "q has " + words.length() + " characters; 200 is the most");
            }
        }
    }

    /**
     * Part of a list.
     *
     * @param next cursor of the following part; empty at the end
     */
    record Page<T>(List<T> items, Optional<String> next) {
        public Page {
            items = List.copyOf(items);
        }
    }

    /** A sheet that names another. */
    record Use(UUID id, Kind kind, String title, Content.Relation relation, Optional<Integer> revision) {}

    /** One string in one rig revision. */
    record StringSetting(
            int revision,
            Instant savedAt,
            Optional<LocalDate> date,
            Optional<Integer> input,
            Optional<Double> sensitivity,
            double trimDecibels) {}
}
