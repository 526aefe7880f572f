package rosinbook.share;

import java.time.LocalDate;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/** A notebook that holds only what is shared: exact revisions, and not one sheet more. */
final class SharedPages implements Pages {
    private final Pages pages;
    private final Set<Reference> shown;

    SharedPages(Pages pages, Set<Reference> shown) {
        this.pages = pages;
        this.shown = Set.copyOf(shown);
        pages.fetch(shown);
    }

    /** The newest of the shared revisions of that sheet. */
    @Override
    public Optional<Revision> newest(UUID sheetId) {
        return shown.stream()
                .filter(reference -> reference.id().equals(sheetId))
                .max(Comparator.comparing(Reference::revision))
                .flatMap(reference -> pages.revision(sheetId, reference.revision()));
    }

    @Override
    public Optional<Revision> revision(UUID sheetId, int number) {
        return shown.contains(new Reference(sheetId, number)) ? pages.revision(sheetId, number) : Optional.empty();
    }

    @Override
    public Optional<Revision> newestForSaving(UUID sheetId) {
        throw readOnly();
    }

    @Override
    public void append(Revision revision, Content content) {
        throw readOnly();
    }

    @Override
    public Page<Revision> list(Query query) {
        throw closed();
    }

    @Override
    public Page<Revision> history(UUID sheetId, int limit, Optional<Integer> below) {
        throw closed();
    }

    @Override
    public List<Use> usedBy(UUID sheetId) {
        throw closed();
    }

    @Override
    public Map<String, Integer> styles() {
        throw closed();
    }

    @Override
    public Map<Kind, Integer> counts() {
        throw closed();
    }

    @Override
    public Map<UUID, LocalDate> lastPlayed(Collection<UUID> ids) {
        throw closed();
    }

    @Override
    public Map<UUID, Integer> useCounts(Content.Relation relation, Kind kind, Collection<UUID> ids) {
        throw closed();
    }

    @Override
    public Map<Integer, List<StringSetting>> stringHistory(UUID rigId) {
        throw closed();
    }

    @Override
    public boolean holds(Blob blob) {
        throw closed();
    }

    @Override
    public Optional<byte[]> read(Blob blob) {
        throw closed();
    }

    @Override
    public void keep(Blob blob, byte[] bytes) {
        throw readOnly();
    }

    @Override
    public List<Revision> setlists(Set<Boolean> played, LocalDate fromInclusive, LocalDate toInclusive, int limit) {
        throw closed();
    }

    @Override
    public Optional<Revision> firstPlanned(LocalDate fromInclusive) {
        throw closed();
    }

    private static UnsupportedOperationException readOnly() {
        return new UnsupportedOperationException("a share cannot write");
    }

    private static UnsupportedOperationException closed() {
        return new UnsupportedOperationException("a share shows what it names and nothing around it");
    }
}
