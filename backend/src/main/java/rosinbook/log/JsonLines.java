package rosinbook.log;

import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.encoder.Encoder;
import net.logstash.logback.composite.AbstractFieldJsonProvider;
import net.logstash.logback.composite.loggingevent.KeyValuePairsJsonProvider;
import net.logstash.logback.composite.loggingevent.LogLevelJsonProvider;
import net.logstash.logback.composite.loggingevent.LoggerNameJsonProvider;
import net.logstash.logback.composite.loggingevent.LoggingEventFormattedTimestampJsonProvider;
import net.logstash.logback.composite.loggingevent.LoggingEventJsonProviders;
import net.logstash.logback.composite.loggingevent.MdcJsonProvider;
import net.logstash.logback.composite.loggingevent.MessageJsonProvider;
import net.logstash.logback.composite.loggingevent.StackTraceJsonProvider;
import net.logstash.logback.encoder.LoggingEventCompositeJsonEncoder;

/** Log lines as JSON: time, level, logger, message, whatever stands beside the message, and the stack trace. */
final class JsonLines {
    private JsonLines() {}

    static Encoder<ILoggingEvent> encoder(LoggerContext logs) {
        LoggingEventFormattedTimestampJsonProvider time = new LoggingEventFormattedTimestampJsonProvider();
        time.setTimeZone("UTC");
        LoggingEventJsonProviders members = new LoggingEventJsonProviders();
        members.addProvider(named("time", time));
        members.addProvider(named("level", new LogLevelJsonProvider()));
        members.addProvider(named("logger", new LoggerNameJsonProvider()));
        members.addProvider(new MessageJsonProvider());
        members.addProvider(new MdcJsonProvider());
        members.addProvider(new KeyValuePairsJsonProvider());
        members.addProvider(named("trace", new StackTraceJsonProvider()));
        LoggingEventCompositeJsonEncoder encoder = new LoggingEventCompositeJsonEncoder();
        encoder.setContext(logs);
        encoder.setProviders(members);
        encoder.setFindAndRegisterJacksonModules(false);
        return encoder;
    }

    private static <T extends AbstractFieldJsonProvider<?>> T named(String name, T member) {
        member.setFieldName(name);
        return member;
    }
}
