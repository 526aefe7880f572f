package rosinbook.web;

import java.util.Optional;
import rosinbook.store.Backups;

/**
 * What the keeper of the place has set up around the notebook.
 *
 * @param metricsKey opens the metrics to whoever brings it
 * @param backups that can be seen and made; empty if none are kept
 */
public record Housekeeping(Optional<MetricsKey> metricsKey, Optional<Backups> backups) {
    /** Neither. */
    public static final Housekeeping NONE = new Housekeeping(Optional.empty(), Optional.empty());
}
