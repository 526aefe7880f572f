package rosinbook.store;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.BinaryOperator;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipFile;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Reference;
import rosinbook.notebook.Revision;

/** An archive on disk, to look single revisions up in without a database. Close it after use. */
public final class ArchiveFile implements AutoCloseable {
    private final ZipFile zip;

    private ArchiveFile(ZipFile zip) {
        this.zip = zip;
    }

    /** @throws ArchiveUnreadable if it is no ZIP, or larger than an archive may be */
    public static ArchiveFile open(Path file) throws IOException {
        ArchiveDirectory.names(file);
        try {
            return new ArchiveFile(new ZipFile(file.toFile(), StandardCharsets.UTF_8));
        } catch (ZipException | IllegalArgumentException problem) {
            throw new ArchiveUnreadable("this is not a ZIP that can be read; export it again");
        }
    }

    /** The newest revision of every sheet of a kind, by id. */
    public List<Revision> newest(Kind kind) throws IOException {
        var names = new TreeMap<String, String>();
        zip.stream()
                .map(ZipEntry::getName)
                .filter(name -> name.startsWith("sheets/" + kind.path() + "/"))
                .filter(name -> ArchiveEntry.NAME.matcher(name).matches())
                .forEach(name -> names.merge(name.split("/")[2], name, BinaryOperator.maxBy(ArchiveEntry.ORDER)));
        List<Revision> revisions = new ArrayList<>();
        for (String name : names.values()) {
            revisions.add(read(name));
        }
        return revisions;
    }

    /**
     * The exact revision, or the newest where the reference leaves it open; empty if it is not in this archive.
     *
     * @throws ArchiveUnreadable if its file is damaged
     */
    public Optional<Revision> find(Kind kind, Reference reference) throws IOException {
        Optional<String> name = reference.revision() == null
                ? newestName(kind, reference.id())
                : Optional.of(ArchiveEntry.name(kind, reference.id(), reference.revision()))
                        .filter(each -> zip.getEntry(each) != null);
        return name.isEmpty() ? Optional.empty() : Optional.of(read(name.get()));
    }

    private Optional<String> newestName(Kind kind, UUID id) {
        String folder = "sheets/" + kind.path() + "/" + id + "/";
        return zip.stream()
                .map(ZipEntry::getName)
                .filter(name -> name.startsWith(folder))
                .filter(name -> ArchiveEntry.NAME.matcher(name).matches())
                .max(ArchiveEntry.ORDER);
    }

    private Revision read(String name) {
        return ArchiveEntry.read(name, Archive.bytes(zip, name));
    }

    @Override
    public void close() throws IOException {
        zip.close();
    }
}
