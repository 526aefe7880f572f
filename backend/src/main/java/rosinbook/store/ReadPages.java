package rosinbook.store;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jooq.DSLContext;
import rosinbook.notebook.Content;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/**
 * Pages within a transaction that only reads, all from one state: what was asked once is not asked again, and what earlier
 * readers have read is taken from {@link Memory}.
 */
final class ReadPages extends DatabasePages {
    private final Memory memory;
    private final Map<UUID, Integer> heads = new HashMap<>();
    private final Map<Reference, Revision> revisions = new HashMap<>();
    /** Sheets whose newest revision was asked for while something to be remembered was made. */
    private final Set<UUID> consulted = new HashSet<>();

    private boolean isRemembering;
    private boolean missedARevision;

    ReadPages(DSLContext sql, UUID notebookId, Memory memory) {
        super(sql, notebookId);
        this.memory = memory;
    }

    @Override
    public Optional<Revision> newest(UUID sheetId) {
        consulted.add(sheetId);
        fetchHeads(List.of(sheetId));
        int head = heads.get(sheetId);
        return head == 0 ? Optional.empty() : revision(sheetId, head);
    }

    @Override
    public Optional<Revision> revision(UUID sheetId, int number) {
        Reference reference = new Reference(sheetId, number);
        fetchRevisions(List.of(reference));
        missedARevision |= !revisions.containsKey(reference);
        return Optional.ofNullable(revisions.get(reference));
    }

    @Override
    public void fetch(Collection<Reference> references) {
        fetchHeads(references.stream()
                .filter(reference -> reference.revision() == null)
                .map(Reference::id)
                .toList());
        fetchRevisions(references.stream()
                .map(reference ->
                        reference.revision() == null ? new Reference(reference.id(), head(reference.id())) : reference)
                .toList());
    }

    private Integer head(UUID sheetId) {
        int head = heads.get(sheetId);
        return head == 0 ? null : Integer.valueOf(head);
    }

    private void fetchHeads(Collection<UUID> sheetIds) {
        Set<UUID> unknown = new HashSet<>(sheetIds);
        unknown.removeAll(heads.keySet());
        if (!unknown.isEmpty()) {
            Map<UUID, Integer> found = headNumbers(unknown);
            unknown.forEach(id -> heads.put(id, found.getOrDefault(id, 0)));
        }
    }

    private void fetchRevisions(Collection<Reference> exact) {
        Set<Reference> unknown = new HashSet<>();
        for (Reference reference : exact) {
            if (reference.revision() != null && !revisions.containsKey(reference)) {
                memory.revision(notebookId, reference.id(), reference.revision())
                        .ifPresentOrElse(known -> revisions.put(reference, known), () -> unknown.add(reference));
            }
        }
        if (!unknown.isEmpty()) {
            readRevisions(unknown).forEach((revision, letters) -> {
                memory.keep(notebookId, revision, letters);
                revisions.put(revision.reference(), revision);
            });
        }
    }

    @Override
    List<Revision> revisionsOf(List<Reference> exact) {
        fetchRevisions(exact);
        List<Revision> found = new ArrayList<>();
        exact.forEach(reference -> found.add(revisions.get(reference)));
        return found;
    }

    @Override
    public Optional<byte[]> recall(Object key) {
        return memory.made(notebookId, key).filter(this::stillHolds).map(Memory.Made::bytes);
    }

    private boolean stillHolds(Memory.Made made) {
        fetchHeads(made.heads().keySet());
        return made.heads().entrySet().stream()
                .allMatch(head -> heads.get(head.getKey()).equals(head.getValue()));
    }

    @Override
    public byte[] remember(Object key, Function<Pages, byte[]> work) {
        checkByReferenceOnly();
        consulted.clear();
        missedARevision = false;
        isRemembering = true;
        try {
            byte[] bytes = work.apply(this);
            if (!missedARevision) {
                Map<UUID, Integer> from = new HashMap<>();
                consulted.forEach(id -> from.put(id, heads.get(id)));
                memory.keep(notebookId, key, new Memory.Made(bytes, from));
            }
            return bytes;
        } finally {
            isRemembering = false;
        }
    }

    /** What is remembered is held against the revisions it came from, and can come from nothing else. */
    private void checkByReferenceOnly() {
        if (isRemembering) {
            throw new IllegalStateException("what is remembered may look up newest and exact revisions only");
        }
    }

    @Override
    public Page<Revision> list(Query query) {
        checkByReferenceOnly();
        return super.list(query);
    }

    @Override
    public Page<Revision> history(UUID sheetId, int limit, Optional<Integer> below) {
        checkByReferenceOnly();
        return super.history(sheetId, limit, below);
    }

    @Override
    public List<Use> usedBy(UUID sheetId) {
        checkByReferenceOnly();
        return super.usedBy(sheetId);
    }

    @Override
    public Map<String, Integer> styles() {
        checkByReferenceOnly();
        return super.styles();
    }

    @Override
    public Map<Kind, Integer> counts() {
        checkByReferenceOnly();
        return super.counts();
    }

    @Override
    public Map<UUID, LocalDate> lastPlayed(Collection<UUID> ids) {
        checkByReferenceOnly();
        return super.lastPlayed(ids);
    }

    @Override
    public Map<UUID, Integer> useCounts(Content.Relation relation, Kind kind, Collection<UUID> ids) {
        checkByReferenceOnly();
        return super.useCounts(relation, kind, ids);
    }

    @Override
    public Map<Integer, List<StringSetting>> stringHistory(UUID rigId) {
        checkByReferenceOnly();
        return super.stringHistory(rigId);
    }

    @Override
    public List<Revision> setlists(Set<Boolean> played, LocalDate fromInclusive, LocalDate toInclusive, int limit) {
        checkByReferenceOnly();
        return super.setlists(played, fromInclusive, toInclusive, limit);
    }

    @Override
    public Optional<Revision> firstPlanned(LocalDate fromInclusive) {
        checkByReferenceOnly();
        return super.firstPlanned(fromInclusive);
    }
}
