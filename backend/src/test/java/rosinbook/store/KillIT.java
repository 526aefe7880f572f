package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rosinbook.testing.RunningJar;

/**
 * The packaged program is killed (SIGKILL) again and again: while it starts, while several clients write sheets of every
 * kind, while it makes backups, and while it brings old tables up to date. Every answered revision must be there
 * afterwards, with the hash that was answered. {@code -Drosinbook.kills=N} sets how often while
 * they write; {@code -Drosinbook.kills.seed=N} the moments.
 */
class KillIT {
    private static final int KILLS = Integer.getInteger("rosinbook.kills", 30);
    private static final long SEED = Long.getLong("rosinbook.kills.seed", 8017L);

    private final Random random = new Random(SEED);
    private final BusyPlayers players = new BusyPlayers();

    @TempDir
    private Path folder;

    @Test
    void every_answered_save_survives_being_killed() throws Exception {
        Map<BusyPlayers.Key, String> seen = new HashMap<>();
        int whileStarting = 0;
        for (int round = 0; round < KILLS; round++) {
            if (round % 4 == 0) {
                killWhileStarting(folder);
                whileStarting++;
            }
            RunningJar program = RunningJar.serve(folder);
            checkNew(program.address(), seen);
            if (round % 3 == 0) {
                checkWhole(program.address());
            }
            List<Thread> clients = players.start(program.address());
            pause(200 + random.nextInt(1000));
            program.kill();
            for (Thread client : clients) {
                client.join();
            }
        }
        try (RunningJar program = RunningJar.serve(folder)) {
            checkNew(program.address(), seen);
            checkWhole(program.address());
        }
        assertEquals(List.of(), players.lost(folder));
        assertEquals(seen, players.answered);
        long kinds =
                seen.keySet().stream().map(BusyPlayers.Key::kind).distinct().count();
        assertEquals(7, kinds, "all kinds but the log, which is written together with rigs");
        assertTrue(seen.size() > 2 * KILLS, "there was something to lose: " + seen.size());
        int backups = wholeBackups();
        System.out.println("Killed " + KILLS + " times while clients wrote, and " + whileStarting
                + " times while starting; all "
                + seen.size() + " answered revisions were there with their hashes, and all of " + backups
                + " answered backups were whole");
    }

    private void killWhileStarting(Path data) throws IOException, InterruptedException {
        Process process = RunningJar.begin(data);
        pause(100 + random.nextInt(2500));
        process.destroyForcibly().waitFor();
    }

    private static void pause(int millis) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(millis));
    }

    /** What was answered since the last look is there. */
    private void checkNew(String address, Map<BusyPlayers.Key, String> seen) throws IOException, InterruptedException {
        for (Map.Entry<BusyPlayers.Key, String> each : players.answered.entrySet()) {
            if (seen.putIfAbsent(each.getKey(), each.getValue()) == null) {
                assertEquals(each.getValue(), players.read(address, each.getKey()), each.getKey()::toString);
            }
        }
    }

    /** A backup reads every row, and counts what does not belong together. */
    private void checkWhole(String address) throws IOException, InterruptedException {
        String name = players.backup(address);
        players.backups.add(name);
        try (BackupFile backup = BackupFile.open(folder.resolve("backups").resolve(name))) {
            assertEquals(0, backup.cover().damages(), "damages in the notebook as " + name + " found it");
        }
    }

    /** Everything in the folder that has a backup's name is whole; those that were answered are among them. */
    private int wholeBackups() throws IOException {
        BackupFolder kept = new BackupFolder(folder.resolve("backups"));
        List<String> names = kept.list().stream().map(BackupFolder.Kept::name).toList();
        for (String name : names) {
            try (BackupFile backup = BackupFile.open(folder.resolve("backups").resolve(name))) {
                backup.check();
            }
        }
        assertTrue(names.containsAll(players.backups), "every answered backup is kept");
        return players.backups.size();
    }

    @Test
    void old_tables_that_are_being_brought_up_to_date_survive_being_killed() throws Exception {
        Path old = OldNotebook.write(folder.resolve("old"), "2");
        int rounds = Math.max(4, KILLS / 8);
        int onTheWay = 0;
        for (int round = 0; round < rounds; round++) {
            Path data = folder.resolve("round" + round);
            copy(old, data);
            Process process = RunningJar.begin(data);
            Path unfinished = data.resolve("rosinbook.new.mv.db");
            awaitFile(unfinished, process);
            pause(random.nextInt(150));
            process.destroyForcibly().waitFor();
            onTheWay += Files.exists(unfinished) ? 1 : 0;
            try (RunningJar program = RunningJar.serve(data)) {
                OldNotebook.check(program.address());
            }
        }
        assertTrue(onTheWay > 0, "none was killed before the new tables were finished");
        System.out.println("Killed " + rounds + " times while old tables were brought up to date, " + onTheWay
                + " of them before that was finished; nothing was lost");
    }

    private static void awaitFile(Path file, Process process) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(30);
        while (Files.notExists(file)) {
            assertTrue(process.isAlive() && System.nanoTime() < end, "the tables are not brought up to date");
            pause(2);
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        Files.createDirectories(to);
        try (var files = Files.list(from)) {
            for (Path file : files.toList()) {
                Files.copy(file, to.resolve(file.getFileName()), StandardCopyOption.REPLACE_EXISTING);
            }
        }
    }
}
