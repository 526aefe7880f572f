package rosinbook.store;

import static rosinbook.store.schema.Tables.SHEET;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import org.jooq.DSLContext;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Content;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Recipe;
import rosinbook.notebook.Recipes;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/** Adds an archive's revisions to a notebook, within one transaction. */
final class ArchiveImport {
    private final DSLContext sql;
    private final UUID notebookId;
    private final DatabasePages pages;
    private final RevisionWriter writer;
    private final Map<UUID, Content> newest = new LinkedHashMap<>();
    private final Map<Content.Link, String> links = new LinkedHashMap<>();
    private final List<Reference> followers = new ArrayList<>();
    private UUID held;
    private int added;
    private int known;

    ArchiveImport(DSLContext sql, UUID notebookId) {
        this.sql = sql;
        this.notebookId = notebookId;
        this.pages = new DatabasePages(sql, notebookId);
        this.writer = new RevisionWriter(sql, notebookId);
    }

    /** Names are in order, so each sheet's revisions come one after another. */
    Archive.Imported add(List<String> names, Function<String, Revision> read) {
        for (String name : names) {
            add(name, read.apply(name));
        }
        links.forEach(this::check);
        followers.forEach(this::check);
        newest.forEach(writer::writeLinks);
        return new Archive.Imported(added, known);
    }

    /** Files come before the sheets that name them. */
    void keep(String name, byte[] bytes) {
        if (bytes.length == 0 || !name.endsWith("/" + Blob.of(bytes).sha256())) {
            throw new ArchiveUnreadable(name + " is damaged: it does not match its checksum");
        }
        pages.keep(Blob.of(bytes), bytes);
    }

    private void check(Content.Link link, String title) {
        Reference to = link.to();
        Optional<Revision> target =
                to.revision() == null ? pages.newest(to.id()) : pages.revision(to.id(), to.revision());
        if (target.isEmpty() || target.get().kind() != link.kind()) {
            throw new ArchiveUnreadable("the archive is not whole: \"" + title + "\" names a "
                    + link.kind().singular() + " that is in neither place");
        }
    }

    private void check(Reference follower) {
        Revision revision = pages.revision(follower.id(), follower.revision()).orElseThrow();
        try {
            Recipes.resolve(pages, revision);
        } catch (InvalidContent problem) {
            throw new ArchiveUnreadable(
                    "\"" + revision.content().title() + "\" cannot follow its starting point: " + problem.getMessage());
        }
    }

    private void add(String name, Revision revision) {
        boolean isHere = isHere(name, revision);
        if (!isHere && hold(revision.sheetId())) {
            isHere = isHere(name, revision);
        }
        if (isHere) {
            known++;
            return;
        }
        int head = head(name, revision);
        if (revision.number() != head + 1) {
            throw new ArchiveUnreadable(
                    "the archive is not whole: revision " + (head + 1) + " before " + name + " is missing");
        }
        Content content = revision.content();
        for (Blob blob : content.blobs()) {
            if (!pages.holds(blob)) {
                throw new ArchiveUnreadable(
                        "the archive is not whole: \"" + content.title() + "\" names a file that is in neither place");
            }
        }
        writer.appendWithoutLinks(revision, content);
        newest.put(revision.sheetId(), content);
        content.links().values().forEach(link -> links.putIfAbsent(link, content.title()));
        if (content instanceof Recipe recipe && recipe.follows() != null) {
            followers.add(revision.reference());
        }
        added++;
    }

    private boolean isHere(String name, Revision revision) {
        Optional<Revision> here = pages.revision(revision.sheetId(), revision.number());
        if (here.isPresent() && !here.get().sha256().equals(revision.sha256())) {
            throw new ArchiveUnreadable(name + " differs from the revision of the same number in this notebook;"
                    + " import it into an empty notebook instead");
        }
        return here.isPresent();
    }

    /**
     * From now on nobody else saves this sheet; what was read of it before may be out of date.
     *
     * @return false if it is held already
     */
    private boolean hold(UUID sheetId) {
        if (sheetId.equals(held)) {
            return false;
        }
        pages.newestForSaving(sheetId);
        held = sheetId;
        return true;
    }

    private int head(String name, Revision revision) {
        var sheet = sql.select(SHEET.HEAD_NUMBER, SHEET.KIND)
                .from(SHEET)
                .where(SHEET.NOTEBOOK_ID.eq(notebookId))
                .and(SHEET.ID.eq(revision.sheetId()))
                .fetchOne();
        if (sheet == null) {
            return 0;
        }
        if (!sheet.value2().equals(revision.kind().path())) {
            throw new ArchiveUnreadable(name + " uses an id that belongs to something else here");
        }
        return sheet.value1();
    }
}
