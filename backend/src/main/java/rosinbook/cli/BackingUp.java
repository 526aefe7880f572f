package rosinbook.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import rosinbook.store.Backups;
import rosinbook.store.Database;

/** What a running service does for backups: makes them by itself, and on request of the command. */
final class BackingUp implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(BackingUp.class);

    private final List<AutoCloseable> parts;

    private BackingUp(List<AutoCloseable> parts) {
        this.parts = parts;
    }

    /**
     * Begins.
     *
     * @param folder of an embedded notebook; any other the command reads by itself
     * @param backups to be made every day; empty for none
     */
    static BackingUp start(Optional<Path> folder, Database database, Optional<Backups> backups, Clock clock) {
        List<AutoCloseable> parts = new ArrayList<>();
        backups.map(DailyBackups::new).ifPresent(parts::add);
        if (folder.isPresent()) {
            try {
                parts.add(RunningService.open(folder.get(), database, clock));
            } catch (IOException problem) {
                LOG.warn("\"rosinbook backup\" cannot reach this service", problem);
            }
        }
        return new BackingUp(parts);
    }

    @Override
    public void close() {
        for (AutoCloseable part : parts) {
            try {
                part.close();
            } catch (Exception problem) {
                LOG.warn("not stopped in order", problem);
            }
        }
    }
}
