package rosinbook.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import rosinbook.level.LevelBench;
import rosinbook.level.LevelOptions;
import rosinbook.level.Progress;
import rosinbook.level.UnreadableWav;
import rosinbook.level.UnusableRecording;
import rosinbook.level.WavRecording;
import rosinbook.limit.PastLimit;
import rosinbook.notebook.Content;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.Revision;
import rosinbook.store.ArchiveFile;
import rosinbook.store.ArchiveUnreadable;
import rosinbook.take.Cleaner;
import rosinbook.take.Cleaning;
import rosinbook.take.MidiExport;
import rosinbook.take.MusicXmlExport;
import rosinbook.take.TakeReader;
import rosinbook.take.TakeReport;
import rosinbook.take.smf.MidiFormatException;

/**
 * Any bytes, to each parser: read, or refused in words, in memory that the input's length bounds. Anything else fails, by an
 * exception or an assertion.
 */
final class Parsers {
    /** What any parser may ask for, in bytes, whatever comes in; and for each byte of it. */
    private static final long FREE_BYTES = 64L << 20;

    private static final long BYTES_FOR_EACH = 4_000;

    private Parsers() {}

    @FunctionalInterface
    private interface Reading {
        void read() throws IOException;
    }

    /** The first time, classes may be loaded, too; that is counted as somebody else's only if a second reading takes less. */
    private static void inLittleMemory(byte[] input, Reading reading) throws IOException {
        long most = FREE_BYTES + BYTES_FOR_EACH * input.length;
        if (allocated(reading) > most) {
            long allocated = allocated(reading);
            assertTrue(allocated <= most, allocated + " bytes for an input of " + input.length);
        }
    }

    private static long allocated(Reading reading) throws IOException {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        reading.read();
        return threads.getCurrentThreadAllocatedBytes() - before;
    }

    private static void inWords(Exception refused) {
        assertTrue(refused.getMessage() != null && refused.getMessage().length() > 8, refused::toString);
    }

    static void midi(byte[] bytes) throws IOException {
        inLittleMemory(bytes, () -> {
            try {
                Cleaning cleaning = Cleaner.STANDARD.clean(TakeReader.GUESSING.read(bytes));
                TakeReport.of(cleaning, java.util.Optional.empty());
                TakeReader.GUESSING.read(new MidiExport(true).toBytes(cleaning));
                new MusicXmlExport(OptionalDouble.empty(), 4, true).toXml(cleaning);
            } catch (MidiFormatException | IllegalArgumentException refused) {
                inWords(refused);
            }
        });
    }

    static void wav(byte[] bytes) throws IOException {
        Path file = Files.createTempFile("rosinbook-fuzz", ".wav");
        try {
            Files.write(file, bytes);
            inLittleMemory(bytes, () -> {
                try {
                    LevelBench.measure(WavRecording.open(file), LevelOptions.usual(), Progress.NONE);
                } catch (UnreadableWav | UnusableRecording | PastLimit refused) {
                    inWords(refused);
                }
            });
        } finally {
            Files.delete(file);
        }
    }

    static void archive(byte[] bytes) throws IOException {
        Path file = Files.createTempFile("rosinbook-fuzz", ".zip");
        try {
            Files.write(file, bytes);
            inLittleMemory(bytes, () -> {
                try (ArchiveFile archive = ArchiveFile.open(file)) {
                    for (Kind kind : Kind.values()) {
                        for (Revision revision : archive.newest(kind)) {
                            assertEquals(kind, revision.kind());
                        }
                    }
                } catch (ArchiveUnreadable | PastLimit refused) {
                    inWords(refused);
                }
            });
        } finally {
            Files.delete(file);
        }
    }

    static void json(byte[] bytes) throws IOException {
        inLittleMemory(bytes, () -> {
            JsonNode tree;
            try {
                tree = ContentJson.parse(bytes);
            } catch (InvalidContent refused) {
                inWords(refused);
                return;
            }
            if (tree.isContainerNode()) {
                String canonical = ContentJson.canonical(tree);
                JsonNode again = ContentJson.parse(canonical.getBytes(StandardCharsets.UTF_8));
                assertEquals(canonical, ContentJson.canonical(again));
            }
            for (Kind kind : Kind.values()) {
                content(kind, tree);
            }
        });
    }

    /** What is content of a kind is the same content after it was kept. */
    private static void content(Kind kind, JsonNode tree) {
        Content content;
        try {
            content = ContentJson.read(kind, tree);
        } catch (InvalidContent refused) {
            inWords(refused);
            return;
        }
        assertEquals(content, ContentJson.read(kind, ContentJson.tree(content)));
        content.title();
        content.links();
    }
}
