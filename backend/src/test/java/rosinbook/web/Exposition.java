package rosinbook.web;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Metrics as they are written down, read strictly after "Exposition formats, text-based format" of Prometheus'
 * documentation, version 0.0.4: a family's lines stand together, its HELP and TYPE come first and once, no series occurs
 * twice, and a histogram's buckets grow up to +Inf, which equals its count.
 */
record Exposition(String text, Map<String, String> types, List<Sample> samples) {
    private static final Pattern COMMENT = Pattern.compile("# (HELP|TYPE) ([a-zA-Z_:][a-zA-Z0-9_:]*) (.*)");
    private static final Pattern SAMPLE =
            Pattern.compile("([a-zA-Z_:][a-zA-Z0-9_:]*)(?:\\{(.*)})? (NaN|[+-]Inf|[-+0-9.eE]+)");
    private static final Pattern LABEL =
            Pattern.compile("([a-zA-Z_][a-zA-Z0-9_]*)=\"((?:[^\"\\\\\n]|\\\\[\\\\\"n])*)\"(?:,|$)");
    private static final Set<String> TYPES = Set.of("counter", "gauge", "histogram", "summary", "untyped");

    /** One figure. */
    record Sample(String name, Map<String, String> labels, double value) {}

    static Exposition parse(String text) {
        if (!text.endsWith("\n")) {
            throw new AssertionError("the last line must end with a line feed");
        }
        Map<String, String> types = new LinkedHashMap<>();
        List<Sample> samples = new ArrayList<>();
        Set<String> finished = new HashSet<>();
        Set<String> comments = new HashSet<>();
        Set<String> series = new HashSet<>();
        String family = "";
        for (String line : text.split("\n")) {
            Matcher comment = COMMENT.matcher(line);
            String now;
            if (comment.matches()) {
                now = comment.group(2);
                require(comments.add(comment.group(1) + now), "twice: " + line);
                if (comment.group(1).equals("TYPE")) {
                    require(TYPES.contains(comment.group(3)), "no such type: " + line);
                    types.put(now, comment.group(3));
                }
            } else {
                Sample sample = sample(line);
                require(series.add(sample.name() + sample.labels()), "twice: " + line);
                samples.add(sample);
                now = familyOf(sample.name(), types);
            }
            if (!now.equals(family)) {
                require(finished.add(family), "apart from its family: " + line);
                require(!finished.contains(now), "apart from its family: " + line);
                family = now;
            }
        }
        Exposition read = new Exposition(text, types, samples);
        read.checkHistograms();
        return read;
    }

    private static String familyOf(String name, Map<String, String> types) {
        String base = name.replaceFirst("_(bucket|sum|count)$", "");
        boolean isPart = Set.of("histogram", "summary").contains(types.getOrDefault(base, ""));
        String family = isPart ? base : name;
        require(types.containsKey(family), "without a TYPE before it: " + name);
        return family;
    }

    private static Sample sample(String line) {
        Matcher matcher = SAMPLE.matcher(line);
        require(matcher.matches(), "neither a comment nor a sample: " + line);
        Map<String, String> labels = new TreeMap<>();
        if (matcher.group(2) != null) {
            Matcher label = LABEL.matcher(matcher.group(2));
            int end = 0;
            while (label.find()) {
                require(label.start() == end, "labels cannot be read: " + line);
                require(labels.put(label.group(1), label.group(2)) == null, "a label twice: " + line);
                end = label.end();
            }
            require(end == matcher.group(2).length(), "labels cannot be read: " + line);
        }
        return new Sample(matcher.group(1), labels, number(matcher.group(3)));
    }

    private static double number(String text) {
        return switch (text) {
            case "+Inf" -> Double.POSITIVE_INFINITY;
            case "-Inf" -> Double.NEGATIVE_INFINITY;
            default -> Double.parseDouble(text);
        };
    }

    private void checkHistograms() {
        Map<Map<String, String>, Sample> before = new HashMap<>();
        for (Sample sample : samples) {
            if (!sample.name().endsWith("_bucket")) {
                continue;
            }
            Map<String, String> key = new TreeMap<>(sample.labels());
            String end = key.remove("le");
            require(end != null, "a bucket without its end: " + sample);
            key.put("", sample.name());
            Sample smaller = before.put(key, sample);
            if (smaller != null) {
                require(
                        number(end) > number(smaller.labels().get("le")) && sample.value() >= smaller.value(),
                        "buckets do not grow: " + sample);
            }
        }
        before.forEach((key, last) -> {
            require(last.labels().get("le").equals("+Inf"), "the last bucket has an end: " + last);
            Map<String, String> labels = new TreeMap<>(last.labels());
            labels.remove("le");
            String count = last.name().replaceFirst("_bucket$", "_count");
            require(
                    samples.contains(new Sample(count, labels, last.value())),
                    "the last bucket is not the count: " + last);
        });
    }

    private static void require(boolean isSo, String otherwise) {
        if (!isSo) {
            throw new AssertionError(otherwise);
        }
    }

    String typeOf(String family) {
        return types.getOrDefault(family, "");
    }

    /** Samples of this name that have at least these labels: name, value, name, value. */
    List<Sample> samples(String name, String... labels) {
        Map<String, String> wanted = new HashMap<>();
        for (int i = 0; i < labels.length; i += 2) {
            wanted.put(labels[i], labels[i + 1]);
        }
        return samples.stream()
                .filter(sample ->
                        sample.name().equals(name) && sample.labels().entrySet().containsAll(wanted.entrySet()))
                .toList();
    }

    /** The only one; 0 if there is none. */
    double figure(String name, String... labels) {
        List<Sample> found = samples(name, labels);
        require(found.size() < 2, "more than one " + name);
        return found.isEmpty() ? 0 : found.get(0).value();
    }
}
