package rosinbook.store;

import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.store.ArchiveUnreadable.Trouble;

/**
 * What a ZIP says of its files, read with care before anything is unpacked. It is stricter than ZIP: nothing before, between the
 * parts of or behind the directory; plain files only, stored or deflated; none twice, none over another.
 *
 * @see "PKWARE, .ZIP File Format Specification 6.3.10, 4.3 and 4.4"
 */
final class ArchiveDirectory {
    private static final int END_BYTES = 22;
    private static final int LOCATOR_BYTES = 20;
    private static final int LONG_END_BYTES = 56;
    private static final int ENTRY_BYTES = 46;
    private static final int LOCAL_BYTES = 30;
    private static final int USUAL_ENTRY_BYTES = 200;
    private static final long UNKNOWN = 0xFFFF_FFFFL;
    private static final int UNIX = 3;
    private static final int STORED = 0;
    private static final int DEFLATED = 8;

    private final FileChannel file;
    private final List<long[]> places = new ArrayList<>();
    private final List<String> names = new ArrayList<>();
    private final Set<String> seen = new HashSet<>();
    private long unpacked;

    private ArchiveDirectory(FileChannel file) {
        this.file = file;
    }

    /**
     * The names of all files, in the order of the directory.
     *
     * @throws ArchiveUnreadable if it is no ZIP as an archive is one
     * @throws PastLimit if there is too much of something
     */
    static List<String> names(Path zip) throws IOException {
        try (FileChannel file = FileChannel.open(zip)) {
            Limit.ARCHIVE_BYTES.check(file.size());
            return new ArchiveDirectory(file).read();
        } catch (EOFException cutShort) {
            throw noZip();
        }
    }

    private static ArchiveUnreadable noZip() {
        return new ArchiveUnreadable("this is not a ZIP that can be read; export it again");
    }

    private List<String> read() throws IOException {
        long endAt = file.size() - END_BYTES;
        ByteBuffer end = bytes(endAt, END_BYTES);
        if (end.getInt(0) != 0x0605_4b50 || end.getShort(20) != 0 || end.getInt(4) != 0) {
            throw noZip();
        }
        long count = end.getShort(10) & 0xFFFF;
        long size = end.getInt(12) & UNKNOWN;
        long from = end.getInt(16) & UNKNOWN;
        if (count == 0xFFFF || size == UNKNOWN || from == UNKNOWN) {
            ByteBuffer locator = bytes(endAt - LOCATOR_BYTES, LOCATOR_BYTES);
            long longEndAt = endAt - LOCATOR_BYTES - LONG_END_BYTES;
            ByteBuffer longEnd = bytes(longEndAt, LONG_END_BYTES);
            if (locator.getInt(0) != 0x0706_4b50
                    || locator.getLong(8) != longEndAt
                    || longEnd.getInt(0) != 0x0606_4b50) {
                throw noZip();
            }
            count = longEnd.getLong(32);
            size = longEnd.getLong(40);
            from = longEnd.getLong(48);
            endAt = longEndAt;
        }
        if (count < 0 || count > Limit.ARCHIVE_ENTRIES.most()) {
            throw new PastLimit(Limit.ARCHIVE_ENTRIES);
        }
        if (from < 0 || size != endAt - from) {
            throw noZip();
        }
        if (size > USUAL_ENTRY_BYTES * (count + 10)) {
            throw strange("its directory is far too large");
        }
        entries((int) count, from);
        refuseOverlaps(from);
        return names;
    }

    private ByteBuffer bytes(long at, int count) throws IOException {
        if (at < 0) {
            throw noZip();
        }
        ByteBuffer bytes = ByteBuffer.allocate(count).order(ByteOrder.LITTLE_ENDIAN);
        while (bytes.hasRemaining()) {
            if (file.read(bytes, at + bytes.position()) < 0) {
                throw new EOFException();
            }
        }
        return bytes;
    }

    private void entries(int count, long from) throws IOException {
        long end = from;
        file.position(from);
        InputStream buffered = new BufferedInputStream(Channels.newInputStream(file), 1 << 16);
        DataInputStream directory = new DataInputStream(buffered);
        byte[] fixed = new byte[ENTRY_BYTES];
        for (int i = 0; i < count; i++) {
            directory.readFully(fixed);
            ByteBuffer entry = ByteBuffer.wrap(fixed).order(ByteOrder.LITTLE_ENDIAN);
            if (entry.getInt(0) != 0x0201_4b50) {
                throw noZip();
            }
            byte[] name = new byte[entry.getShort(28) & 0xFFFF];
            directory.readFully(name);
            int rest = (entry.getShort(30) & 0xFFFF) + (entry.getShort(32) & 0xFFFF);
            directory.skipNBytes(rest);
            end += ENTRY_BYTES + name.length + rest;
            check(entry, name);
        }
        if (file.size() - end > END_BYTES + LOCATOR_BYTES + LONG_END_BYTES) {
            throw noZip();
        }
    }

    private void check(ByteBuffer entry, byte[] rawName) {
        String name = name(rawName);
        if (!seen.add(name)) {
            throw new ArchiveUnreadable(
                    Trouble.NAME_TWICE, "this archive holds two files of the same name; export it again");
        }
        boolean isLocked = (entry.getShort(8) & 1) != 0;
        int method = entry.getShort(10) & 0xFFFF;
        boolean isUnix = (entry.getShort(4) >> 8 & 0xFF) == UNIX;
        int mode = entry.getInt(38) >>> 28;
        if (isLocked || method != STORED && method != DEFLATED || isUnix && mode != 0 && mode != 8) {
            throw strange("it holds something that is no plain file");
        }
        long packed = entry.getInt(20) & UNKNOWN;
        long size = entry.getInt(24) & UNKNOWN;
        if (size > Archive.mostBytes(name)) {
            throw new PastLimit(Limit.ARCHIVE_ENTRY_BYTES);
        }
        unpacked += size;
        Limit.ARCHIVE_UNPACKED_BYTES.check(unpacked);
        if (method == STORED && packed != size) {
            throw strange("the sizes of a file contradict each other");
        }
        long at = entry.getInt(42) & UNKNOWN;
        places.add(new long[] {at, at + LOCAL_BYTES + rawName.length + packed});
        names.add(name);
    }

    private static String name(byte[] raw) {
        try {
            String name = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(raw))
                    .toString();
            if (Archive.isOurs(name)) {
                return name;
            }
        } catch (CharacterCodingException noText) {
            // told below
        }
        throw new ArchiveUnreadable(
                Trouble.STRANGE_NAME,
                "this archive holds a file that does not belong in one; nothing was read. Export the notebook again,"
                        + " and leave the ZIP as it is");
    }

    private static ArchiveUnreadable strange(String what) {
        return new ArchiveUnreadable(
                Trouble.STRANGE_ENTRY, "this archive was not written here: " + what + "; export the notebook again");
    }

    private void refuseOverlaps(long directoryAt) {
        places.sort(Comparator.comparingLong(place -> place[0]));
        for (int i = 0; i < places.size(); i++) {
            long next = i + 1 < places.size() ? places.get(i + 1)[0] : directoryAt;
            if (places.get(i)[1] > next) {
                throw new ArchiveUnreadable(
                        Trouble.OVERLAPPING,
                        "in this archive, files lie over one another; it was not written here. Export the notebook again");
            }
        }
    }
}
