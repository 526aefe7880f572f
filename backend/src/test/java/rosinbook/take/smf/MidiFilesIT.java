package rosinbook.take.smf;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rosinbook.testing.Needs;

/** Real files of Debian's openttd-openmsx and pianobooster, read by us, by {@code javax.sound.midi} and by midicsv. */
class MidiFilesIT {
    private static final List<Path> FOLDERS = List.of(
            Path.of("/usr/share/games/openttd/baseset/openmsx"), Path.of("/usr/share/doc/pianobooster/courses"));

    private static List<Path> files;

    @BeforeAll
    static void needsFiles() throws IOException {
        files = new ArrayList<>();
        for (Path folder : FOLDERS) {
            Needs.met(
                    Files.isDirectory(folder),
                    "real MIDI files come from Debian's openttd-openmsx and pianobooster; " + folder + " is missing");
            try (Stream<Path> found = Files.walk(folder)) {
                found.filter(path -> path.toString().endsWith(".mid")).sorted().forEach(files::add);
            }
        }
        assertEquals(true, files.size() >= 31, "only " + files.size() + " files");
    }

    @Test
    void notes_and_times_are_those_of_the_java_reader() throws Exception {
        for (Path path : files) {
            byte[] bytes = Files.readAllBytes(path);
            Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(bytes));
            assertEquals(messages(sequence), messages(MidiFile.parse(bytes)), path.toString());
        }
    }

    @Test
    void what_we_write_of_them_the_java_reader_reads_the_same() throws Exception {
        for (Path path : files) {
            MidiFile file = MidiFile.parse(Files.readAllBytes(path));
            Sequence sequence = MidiSystem.getSequence(new ByteArrayInputStream(file.toBytes()));
            assertEquals(messages(file), messages(sequence), path.toString());
        }
    }

    @Test
    void notes_tempos_and_ticks_are_those_of_midicsv() throws Exception {
        Needs.met(Files.isExecutable(Path.of("/usr/bin/midicsv")), "install Debian's midicsv");
        for (Path path : files) {
            Process process = new ProcessBuilder("/usr/bin/midicsv", path.toString()).start();
            List<String> theirs = new ArrayList<>();
            for (String line : new String(process.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1)
                    .lines()
                    .toList()) {
                String[] cells = line.split(", ");
                if (cells.length > 2 && (cells[2].startsWith("Note_o") || cells[2].equals("Tempo"))) {
                    theirs.add(cells[0] + " " + cells[1] + " " + cells[2] + " "
                            + String.join(" ", List.of(cells).subList(3, cells.length)));
                }
            }
            assertEquals(0, process.waitFor());
            assertEquals(theirs, asMidicsv(MidiFile.parse(Files.readAllBytes(path))), path.toString());
        }
    }

    private static List<String> asMidicsv(MidiFile file) {
        List<String> lines = new ArrayList<>();
        for (int number = 0; number < file.tracks().size(); number++) {
            MidiTrack track = file.tracks().get(number);
            for (int index = 0; index < track.size(); index++) {
                String at = (number + 1) + " " + track.tick(index);
                int command = track.command(index);
                if (command == 0x90 || command == 0x80) {
                    lines.add(at + (command == 0x90 ? " Note_on_c " : " Note_off_c ") + track.channel(index) + " "
                            + track.data1(index) + " " + track.data2(index));
                } else if (track.status(index) == MidiTrack.META && track.data1(index) == MidiTrack.TEMPO) {
                    byte[] micros = track.payload(index);
                    lines.add(at + " Tempo " + ((micros[0] & 0xFF) << 16 | (micros[1] & 0xFF) << 8 | micros[2] & 0xFF));
                }
            }
        }
        return lines;
    }

    private static List<String> messages(MidiFile file) {
        List<String> messages = new ArrayList<>();
        for (int number = 0; number < file.tracks().size(); number++) {
            MidiTrack track = file.tracks().get(number);
            for (int index = 0; index < track.size(); index++) {
                if (track.status(index) < 0xF0) {
                    messages.add(number + " " + track.tick(index) + " " + track.status(index) + " " + track.data1(index)
                            + " " + track.data2(index));
                }
            }
        }
        return messages;
    }

    private static List<String> messages(Sequence sequence) {
        List<String> messages = new ArrayList<>();
        for (int number = 0; number < sequence.getTracks().length; number++) {
            Track track = sequence.getTracks()[number];
            for (int index = 0; index < track.size(); index++) {
                MidiEvent event = track.get(index);
                if (event.getMessage() instanceof ShortMessage message) {
                    messages.add(number + " " + event.getTick() + " " + message.getStatus() + " " + message.getData1()
                            + " " + message.getData2());
                }
            }
        }
        return messages;
    }
}
