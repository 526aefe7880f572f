package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.Collections;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Notebook;
import rosinbook.store.ArchiveUnreadable.Trouble;

/** ZIPs that were not made to be read. Each is refused by its own name, in little memory, and nothing is added. */
class HostileArchiveTest {
    private static final String COVER = "rosinbook.json";
    private static final String NAME = "sheets/pieces/00000000-0000-0000-0000-000000000001/r0001.json";

    @TempDir
    Path folder;

    private final Database database = Database.inMemory("t" + UUID.randomUUID());
    private final Archive archive = new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
    private final ForgedZip zip = new ForgedZip();

    @BeforeEach
    void cover() {
        DatabaseSheetStore.onlyNotebook(database, Clock.systemUTC().instant());
        zip.add(COVER, "{\"format\": 1}");
    }

    @AfterEach
    void nothing_was_added() {
        assertEquals(Collections.nCopies(4, 0), RowCounts.of(database));
        database.close();
    }

    private Archive.Imported read(byte[] bytes) throws IOException {
        return archive.read(new ByteArrayInputStream(bytes));
    }

    private void assertTrouble(Trouble trouble) {
        byte[] bytes = zip.bytes();
        ArchiveUnreadable problem = assertThrows(ArchiveUnreadable.class, () -> read(bytes));
        assertEquals(trouble, problem.trouble(), problem.getMessage());
    }

    private void assertPast(Limit limit) {
        byte[] bytes = zip.bytes();
        PastLimit problem = assertThrows(PastLimit.class, () -> read(bytes));
        assertEquals(limit, problem.limit(), problem.getMessage());
    }

    @Test
    void what_is_not_forged_is_read() throws IOException {
        assertEquals(new Archive.Imported(0, 0), read(zip.bytes()));
        zip.isLong = true;
        assertEquals(new Archive.Imported(0, 0), read(zip.bytes()));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../evil.json",
                "sheets/../../evil.json",
                "/etc/passwd",
                "C:\\evil.json",
                "sheets\\pieces\\00000000-0000-0000-0000-000000000001\\r0001.json",
                "sheets/pieces/..%2f..%2f",
                "sheets/pieces/00000000-0000-0000-0000-000000000001/r0001.json/",
                "sheets/pieces/00000000-0000-0000-0000-000000000001/r0001.json\0",
                "SHEETS/pieces/00000000-0000-0000-0000-000000000001/r0001.json",
                "sheets/pi\u0435ces/00000000-0000-0000-0000-000000000001/r0001.json",
                "sheets/pieces/00000000-0000-0000-0000-000000000001/r\u0660001.json",
                "\uff0e\uff0e/evil.json",
                "rosinbook.json ",
                "./rosinbook.json",
                "",
                "\ud83c\udfbb"
            })
    void a_strange_name_is_refused(String name) {
        zip.add(name, "{}");
        assertTrouble(Trouble.STRANGE_NAME);
    }

    @Test
    void a_name_that_is_no_utf8_is_refused() {
        zip.add("x", "{}").name = new byte[] {(byte) 0xC0, (byte) 0xAE, '/'};
        assertTrouble(Trouble.STRANGE_NAME);
    }

    @Test
    void a_name_that_only_the_file_itself_tells_counts_for_nothing() throws IOException {
        byte[] good = zip.bytes();
        byte[] local = "rosinbook.json".getBytes(StandardCharsets.UTF_8);
        for (int i = 0; i < local.length; i++) {
            good[30 + i] = '.';
        }
        assertEquals(new Archive.Imported(0, 0), read(good));
    }

    @Test
    void the_same_name_twice_is_refused() {
        zip.add(NAME, "{}");
        zip.add(NAME, "[]");
        assertTrouble(Trouble.NAME_TWICE);
    }

    @Test
    void links_folders_and_locked_files_are_refused() {
        ForgedZip.Entry entry = zip.add(NAME, "/etc/passwd");
        entry.madeBy = 3 << 8 | 20;
        for (int mode : new int[] {0xA1FF, 0x41FF, 0x1180, 0x6180}) {
            entry.attributes = mode << 16;
            entry.at = -1;
            assertTrouble(Trouble.STRANGE_ENTRY);
        }
        entry.attributes = 0x8180 << 16;
        entry.flags |= 1;
        assertTrouble(Trouble.STRANGE_ENTRY);
        entry.flags = 0x800;
        entry.method = 12;
        assertTrouble(Trouble.STRANGE_ENTRY);
    }

    @Test
    void a_bomb_of_one_file_is_refused_before_it_is_unpacked() {
        zip.add("blobs/" + "0".repeat(64), new byte[64 << 20]);
        assertPast(Limit.ARCHIVE_ENTRY_BYTES);
    }

    @Test
    void a_bomb_that_says_it_is_small_is_refused_when_it_turns_out_larger() {
        zip.add("blobs/" + "0".repeat(64), new byte[64 << 20]).size = 100;
        long allocated = allocated(() -> assertTrouble(Trouble.UNREADABLE));
        assertTrue(allocated < 64 << 20, allocated + " bytes");
    }

    @Test
    void a_file_that_says_it_is_large_and_is_not_is_refused() {
        zip.add("blobs/" + "0".repeat(64), new byte[100]).size = 15 << 20;
        assertTrouble(Trouble.UNREADABLE);
    }

    @Test
    void many_files_that_unpack_to_too_much_together_are_refused() {
        byte[] large = new byte[16 << 20];
        ForgedZip.Entry first = zip.add("blobs/" + "%064x".formatted(0), large);
        for (int i = 1; i <= 256; i++) {
            ForgedZip.Entry entry = zip.add("blobs/" + "%064x".formatted(i), "");
            entry.packed = first.packed;
            entry.packedSize = first.packedSize;
            entry.size = first.size;
        }
        assertPast(Limit.ARCHIVE_UNPACKED_BYTES);
    }

    @Test
    void files_that_share_their_bytes_are_refused() {
        // Fifield, "A better zip bomb", WOOT 2019: every directory entry points at the same kernel.
        ForgedZip.Entry kernel = zip.add("blobs/" + "%064x".formatted(0), new byte[1 << 20]);
        zip.bytes();
        for (int i = 1; i <= 50; i++) {
            ForgedZip.Entry entry = zip.add("blobs/" + "%064x".formatted(i), "");
            entry.packedSize = kernel.packedSize;
            entry.size = kernel.size;
            entry.at = kernel.at;
            entry.directoryOnly = true;
        }
        assertTrouble(Trouble.OVERLAPPING);
    }

    @Test
    void a_file_that_reaches_into_the_directory_is_refused() {
        zip.add(NAME, "{}").packedSize = 1_000;
        assertTrouble(Trouble.OVERLAPPING);
    }

    @Test
    void an_archive_within_an_archive_is_not_unpacked() {
        byte[] inner = zip.bytes();
        zip.add(NAME, inner);
        assertTrouble(Trouble.UNREADABLE);
    }

    @Test
    void an_archive_as_a_file_is_not_unpacked() {
        byte[] inner = zip.bytes();
        ForgedZip.Entry blob = zip.add("blobs/" + "0".repeat(64), inner);
        assertEquals(inner.length, blob.size);
        assertTrouble(Trouble.UNREADABLE);
    }

    @Test
    void a_million_files_are_refused_in_little_memory() {
        ForgedZip many = new ForgedZip();
        many.isLong = true;
        for (int i = 0; i < 1_000_000; i++) {
            many.store("blobs/" + i, new byte[0]);
        }
        byte[] bytes = many.bytes();
        long allocated = allocated(() -> {
            PastLimit problem = assertThrows(PastLimit.class, () -> read(bytes));
            assertEquals(Limit.ARCHIVE_ENTRIES, problem.limit());
        });
        assertTrue(allocated < 10 << 20, allocated + " bytes");
    }

    @Test
    void an_archive_that_is_too_large_is_refused_by_its_length() throws IOException {
        Path large = folder.resolve("large.zip");
        try (var file = new java.io.RandomAccessFile(large.toFile(), "rw")) {
            file.setLength(Limit.ARCHIVE_BYTES.most() + 1);
        }
        PastLimit problem = assertThrows(PastLimit.class, () -> ArchiveFile.open(large));
        assertEquals(Limit.ARCHIVE_BYTES, problem.limit());
    }

    @Test
    void an_import_that_is_stopped_half_way_leaves_nothing() throws IOException {
        try (ArrivedArchive arrived = ArrivedArchive.from(new ByteArrayInputStream(real()))) {
            PastLimit stopped =
                    assertThrows(PastLimit.class, () -> archive.read(arrived, () -> Limit.IMPORT_SECONDS.check(1_801)));
            assertEquals(Limit.IMPORT_SECONDS, stopped.limit());
        }
    }

    @Test
    void a_count_that_lies_is_refused() {
        zip.add(NAME, "{}");
        for (long count : new long[] {0, 1, 3, 65_534}) {
            zip.count = count;
            assertTrouble(Trouble.UNREADABLE);
        }
        zip.isLong = true;
        for (long count : new long[] {-1, Long.MIN_VALUE, 1L << 40}) {
            zip.count = count < 0 ? Long.MAX_VALUE : count;
            assertPast(Limit.ARCHIVE_ENTRIES);
        }
    }

    @Test
    void data_descriptors_are_read_over() throws IOException {
        ForgedZip described = new ForgedZip();
        described.add(COVER, "{\"format\": 1}").descriptor = true;
        assertEquals(new Archive.Imported(0, 0), read(described.bytes()));
    }

    @Test
    void what_lies_before_the_first_file_is_not_read() throws IOException {
        ForgedZip real = new ForgedZip();
        Zips.contents(real()).forEach(real::add);
        assertRefusedOrTheSame(real.bytes());
        real.before = new byte[100];
        assertRefusedOrTheSame(real.bytes());
    }

    @Test
    void nothing_may_lie_behind() {
        for (byte[] behind : new byte[][] {{0}, new byte[100], new byte[70_000]}) {
            zip.behind = behind;
            assertTrouble(Trouble.UNREADABLE);
        }
        zip.behind = new byte[0];
        zip.comment = "a comment";
        assertTrouble(Trouble.UNREADABLE);
    }

    @Test
    void a_directory_far_too_large_for_its_files_is_refused() {
        zip.add(NAME, "{}").extra = new byte[60_000];
        assertTrouble(Trouble.STRANGE_ENTRY);
    }

    @Test
    void an_archive_cut_or_bent_anywhere_is_refused_or_read_as_it_was() throws IOException {
        byte[] good = real();
        for (int length = 0; length < good.length; length += 41) {
            assertRefusedOrTheSame(Arrays.copyOf(good, length));
        }
        for (int at = 0; at < good.length; at += 11) {
            byte[] bent = good.clone();
            bent[at] ^= (byte) 0xFF;
            assertRefusedOrTheSame(bent);
        }
    }

    /** An archive of one piece, as it is written. */
    private static byte[] real() throws IOException {
        try (Database source = Database.inMemory("t" + UUID.randomUUID())) {
            Clock clock = Clock.systemUTC();
            Notebook notebook = new Notebook(DatabaseSheetStore.onlyNotebook(source, clock.instant()), clock);
            notebook.create(
                    Kind.PIECES,
                    UUID.fromString("00000000-0000-0000-0000-000000000001"),
                    ContentJson.parse("{\"title\":\"One\"}".getBytes(StandardCharsets.UTF_8)),
                    new Notebook.Note("", ""),
                    java.util.Optional.empty());
            var bytes = new java.io.ByteArrayOutputStream();
            new Archive(source, DatabaseSheetStore.ONLY_NOTEBOOK).export(bytes);
            return bytes.toByteArray();
        }
    }

    /** Some bytes of a ZIP say nothing, such as the time of day: then what is read is what was written. */
    private void assertRefusedOrTheSame(byte[] bytes) throws IOException {
        try {
            ArchiveDirectory.names(Files.write(folder.resolve("bent.zip"), bytes));
        } catch (ArchiveUnreadable | PastLimit refused) {
            assertTrue(refused.getMessage().length() > 20, refused.getMessage());
            assertThrows(RuntimeException.class, () -> read(bytes));
            return;
        }
        try (Database other = Database.inMemory("t" + UUID.randomUUID())) {
            DatabaseSheetStore.onlyNotebook(other, Clock.systemUTC().instant());
            Archive there = new Archive(other, DatabaseSheetStore.ONLY_NOTEBOOK);
            try {
                assertEquals(new Archive.Imported(1, 0), there.read(new ByteArrayInputStream(bytes)));
            } catch (ArchiveUnreadable refused) {
                assertEquals(Collections.nCopies(4, 0), RowCounts.of(other));
                return;
            }
            assertEquals(new Archive.Verified(1, java.util.List.of()), there.verify());
        }
    }

    /** Bytes that this thread asks for meanwhile. */
    private static long allocated(Runnable work) {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        work.run();
        return threads.getCurrentThreadAllocatedBytes() - before;
    }
}
