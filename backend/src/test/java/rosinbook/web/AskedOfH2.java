package rosinbook.web;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.slf4j.LoggerFactory;

/** Listens to what H2 is asked for, and tells how many rows it goes through for that. */
final class AskedOfH2 implements AutoCloseable {
    /** As H2 logs a statement: how long it is, the statement, and its values as SQL writes them. */
    private static final Pattern LOGGED = Pattern.compile("/\\*SQL l:(\\d+)[^*]*\\*/(.*);", Pattern.DOTALL);

    private static final Pattern SCANNED = Pattern.compile("scanCount: (\\d+)");

    private final Logger logger = (Logger) LoggerFactory.getLogger("h2database");
    private final Level before = logger.getLevel();
    private final boolean passedOn = logger.isAdditive();
    private final ListAppender<ILoggingEvent> heard = new ListAppender<>();

    AskedOfH2() {
        heard.start();
        logger.addAppender(heard);
        logger.setAdditive(false);
        logger.setLevel(Level.INFO);
    }

    /** Every statement that reads, with its values. */
    List<String> selects() {
        List<ILoggingEvent> events;
        synchronized (heard) { // as whoever appends does
            events = List.copyOf(heard.list);
        }
        return events.stream()
                .map(ILoggingEvent::getFormattedMessage)
                .map(LOGGED::matcher)
                .filter(Matcher::find)
                .map(found -> withValues(found.group(2), Integer.parseInt(found.group(1))))
                .filter(statement -> statement.startsWith("select"))
                .toList();
    }

    /** Values follow the statement as {@code {1: 'a', 2: 7}}. */
    private static String withValues(String logged, int length) {
        String statement = logged.substring(0, length);
        String values = logged.substring(length).strip();
        StringBuilder whole = new StringBuilder();
        int number = 0;
        for (String part : statement.split("(?<=\\?)")) {
            if (!part.endsWith("?")) {
                whole.append(part);
                continue;
            }
            number++;
            int from = values.indexOf(number + ": ") + (number + ": ").length();
            int next = values.indexOf(", " + (number + 1) + ": ", from);
            whole.append(part, 0, part.length() - 1).append(values, from, next < 0 ? values.lastIndexOf('}') : next);
        }
        return whole.toString();
    }

    /** How many rows of tables H2 goes through to answer. */
    static long rowsRead(Statement statement, String select) throws SQLException {
        try (ResultSet plan = statement.executeQuery("EXPLAIN ANALYZE " + select)) {
            plan.next();
            return SCANNED.matcher(plan.getString(1))
                    .results()
                    .mapToLong(found -> Long.parseLong(found.group(1)))
                    .sum();
        }
    }

    @Override
    public void close() {
        logger.setLevel(before);
        logger.setAdditive(passedOn);
        logger.detachAppender(heard);
        heard.stop();
    }
}
