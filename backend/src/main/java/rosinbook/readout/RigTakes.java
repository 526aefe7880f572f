package rosinbook.readout;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.UUID;
import rosinbook.notebook.Rig;
import rosinbook.notebook.Words;
import rosinbook.take.FaultKind;
import rosinbook.take.StringReport;
import rosinbook.take.TakeReport;

/**
 * How a rig's faults moved when its settings moved: the takes played on each of its revisions, added up.
 *
 * @param revisions those that takes were played on, oldest first
 * @param moves what changed from one to the next, in sentences; different playing changes faults as well
 */
public record RigTakes(List<AtRevision> revisions, List<String> moves) {
    private static final double WORTH_TELLING_PER_MINUTE = 1;
    private static final double WORTH_TELLING_FACTOR = 1.5;

    /** Copies the lists. */
    public RigTakes {
        revisions = List.copyOf(revisions);
        moves = List.copyOf(moves);
    }

    /**
     * A take that was read.
     *
     * @param rigRevision what it was played on
     * @param rig the rig at that revision
     */
    public record Played(
            UUID id, String title, Optional<LocalDate> date, int rigRevision, Rig rig, TakeReport report) {}

    /**
     * The takes of one revision of the rig.
     *
     * @param minutes how long they last together
     * @param strings by number
     */
    public record AtRevision(int revision, double minutes, List<OneTake> takes, List<OnString> strings) {
        /** Copies the lists. */
        public AtRevision {
            takes = List.copyOf(takes);
            strings = List.copyOf(strings);
        }
    }

    /** One take in short. */
    public record OneTake(UUID id, String title, Optional<LocalDate> date, double trackingPercent) {}

    /**
     * One string.
     *
     * @param sensitivity as the rig had it; empty if it was not set
     * @param faultsPerMinute of all kinds
     * @param perMinute by kind; kinds without any are left out
     */
    public record OnString(
            int string, Optional<Double> sensitivity, double faultsPerMinute, Map<FaultKind, Double> perMinute) {
        /** Copies the map. */
        public OnString {
            perMinute = Map.copyOf(perMinute);
        }
    }

    /** Adds takes up. */
    public static RigTakes of(Collection<Played> takes) {
        SortedMap<Integer, List<Played>> byRevision = new TreeMap<>();
        takes.forEach(take -> byRevision
                .computeIfAbsent(take.rigRevision(), none -> new ArrayList<>())
                .add(take));
        List<AtRevision> revisions = new ArrayList<>();
        byRevision.forEach((revision, played) -> revisions.add(at(revision, played)));
        List<String> moves = new ArrayList<>();
        for (int index = 1; index < revisions.size(); index++) {
            moves.addAll(moves(revisions.get(index - 1), revisions.get(index)));
        }
        return new RigTakes(revisions, moves);
    }

    private static AtRevision at(int revision, List<Played> played) {
        double minutes =
                played.stream().mapToDouble(take -> take.report().seconds()).sum() / 60;
        SortedMap<Integer, Map<FaultKind, Double>> counts = new TreeMap<>();
        for (Played take : played) {
            for (StringReport string : take.report().perString()) {
                Map<FaultKind, Double> kinds =
                        counts.computeIfAbsent(string.string(), none -> new EnumMap<>(FaultKind.class));
                string.faults().forEach((kind, count) -> kinds.merge(kind, (double) count, Double::sum));
            }
        }
        Rig rig = played.get(0).rig();
        List<OnString> strings = new ArrayList<>();
        counts.forEach((string, kinds) -> {
            kinds.replaceAll((kind, count) -> minutes > 0 ? count / minutes : 0);
            double all =
                    kinds.values().stream().mapToDouble(Double::doubleValue).sum();
            Rig.Assignment assignment = rig.assignments().get(Integer.toString(string));
            Optional<Double> sensitivity = Optional.ofNullable(assignment).map(Rig.Assignment::sensitivity);
            strings.add(new OnString(string, sensitivity, all, kinds));
        });
        List<OneTake> takes = played.stream()
                .map(take -> new OneTake(
                        take.id(),
                        take.title(),
                        take.date(),
                        take.report().tracking().percent()))
                .toList();
        return new AtRevision(revision, minutes, takes, strings);
    }

    private static List<String> moves(AtRevision was, AtRevision now) {
        List<String> moves = new ArrayList<>();
        for (OnString before : was.strings()) {
            now.strings().stream()
                    .filter(after -> after.string() == before.string())
                    .findFirst()
                    .ifPresent(after -> {
                        for (FaultKind kind : FaultKind.values()) {
                            move(kind, before, after).ifPresent(moves::add);
                        }
                    });
        }
        return moves;
    }

    private static Optional<String> move(FaultKind kind, OnString before, OnString after) {
        double was = before.perMinute().getOrDefault(kind, 0.0);
        double now = after.perMinute().getOrDefault(kind, 0.0);
        double less = Math.min(was, now);
        double more = Math.max(was, now);
        if (more - less < WORTH_TELLING_PER_MINUTE || more < WORTH_TELLING_FACTOR * less) {
            return Optional.empty();
        }
        return Optional.of(plural(kind) + " on string " + before.string() + " went from " + rate(was) + " to "
                + rate(now) + " a minute " + sensitivity(before.sensitivity(), after.sensitivity()) + ".");
    }

    private static String sensitivity(Optional<Double> was, Optional<Double> now) {
        if (Objects.equals(was, now)) {
            return was.map(value -> "while its sensitivity stayed at " + Words.number(value))
                    .orElse("while its sensitivity was not set");
        }
        return "when its sensitivity went from " + was.map(Words::number).orElse("not set") + " to "
                + now.map(Words::number).orElse("not set");
    }

    private static String rate(double perMinute) {
        return Words.number(perMinute < 10 ? Math.rint(perMinute * 10) / 10 : Math.rint(perMinute));
    }

    private static String plural(FaultKind kind) {
        return switch (kind) {
            case SPLIT -> "Splits";
            case STAIRCASE -> "Staircases";
            case GHOST -> "Ghosts";
            case BLIP -> "Blips";
            case BELOW_OPEN -> "Notes below the open string";
            case ABOVE_FINGERBOARD -> "Notes above the fingerboard";
            case HANGING -> "Hanging notes";
            case LATE -> "Late notes";
        };
    }
}
