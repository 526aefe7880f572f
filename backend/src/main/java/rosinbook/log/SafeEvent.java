package rosinbook.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.LoggerContextVO;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.slf4j.Marker;
import org.slf4j.event.KeyValuePair;
import org.slf4j.helpers.MessageFormatter;

/**
 * Something said, fit to be kept. Our own messages are written with care and stay as they are, in one line. A library's
 * message may name an address with a share's token in it, or quote an exception: of its arguments only numbers are kept, and
 * a message without arguments, which may have been put together beforehand, only if the library is known not to do that.
 */
final class SafeEvent implements ILoggingEvent {
    private static final String LEFT_OUT = "\u2026";
    private static final Set<String> SAYS_NOTHING_OF_REQUESTS =
            Set.of("io.javalin", "org.flywaydb", "com.zaxxer.hikari");

    private final ILoggingEvent said;

    SafeEvent(ILoggingEvent said) {
        this.said = said;
    }

    private boolean isOwn() {
        return said.getLoggerName().equals("rosinbook") || said.getLoggerName().startsWith("rosinbook.");
    }

    @Override
    public String getFormattedMessage() {
        return oneLine(isOwn() ? said.getFormattedMessage() : ofLibrary());
    }

    private String ofLibrary() {
        Object[] arguments = said.getArgumentArray();
        if (arguments != null && arguments.length > 0) {
            Object[] kept = Arrays.stream(arguments)
                    .map(argument -> argument instanceof Number ? argument : LEFT_OUT)
                    .toArray();
            return MessageFormatter.basicArrayFormat(said.getMessage(), kept);
        }
        boolean isPlain = SAYS_NOTHING_OF_REQUESTS.stream()
                .anyMatch(name -> said.getLoggerName().startsWith(name));
        return isPlain ? said.getMessage() : LEFT_OUT;
    }

    private static String oneLine(String text) {
        return text == null ? "" : text.replaceAll("\\p{Cntrl}+", " ");
    }

    @Override
    public String getMessage() {
        return getFormattedMessage();
    }

    @Override
    public Object[] getArgumentArray() {
        return new Object[0];
    }

    @Override
    public List<KeyValuePair> getKeyValuePairs() {
        return isOwn() ? said.getKeyValuePairs() : List.of();
    }

    @Override
    public IThrowableProxy getThrowableProxy() {
        return said.getThrowableProxy() == null ? null : new SafeThrowable(said.getThrowableProxy());
    }

    @Override
    public Level getLevel() {
        return said.getLevel();
    }

    @Override
    public String getLoggerName() {
        return said.getLoggerName();
    }

    @Override
    public String getThreadName() {
        return said.getThreadName();
    }

    @Override
    public LoggerContextVO getLoggerContextVO() {
        return said.getLoggerContextVO();
    }

    @Override
    public StackTraceElement[] getCallerData() {
        return said.getCallerData();
    }

    @Override
    public boolean hasCallerData() {
        return said.hasCallerData();
    }

    @Override
    public List<Marker> getMarkerList() {
        return List.of();
    }

    @Override
    public Map<String, String> getMDCPropertyMap() {
        return said.getMDCPropertyMap();
    }

    @Override
    @SuppressWarnings("deprecation")
    public Map<String, String> getMdc() {
        return getMDCPropertyMap();
    }

    @Override
    public long getTimeStamp() {
        return said.getTimeStamp();
    }

    @Override
    public int getNanoseconds() {
        return said.getNanoseconds();
    }

    @Override
    public long getSequenceNumber() {
        return said.getSequenceNumber();
    }

    @Override
    public void prepareForDeferredProcessing() {
        said.prepareForDeferredProcessing();
    }
}
