package rosinbook.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.PatternLayout;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.ThrowableProxy;
import ch.qos.logback.classic.spi.ThrowableProxyUtil;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.encoder.Encoder;
import ch.qos.logback.core.encoder.LayoutWrappingEncoder;
import ch.qos.logback.core.joran.spi.ConsoleTarget;
import ch.qos.logback.core.spi.ContextAwareBase;
import java.nio.charset.StandardCharsets;
import java.util.logging.LogManager;
import org.slf4j.ILoggerFactory;
import org.slf4j.LoggerFactory;
import org.slf4j.bridge.SLF4JBridgeHandler;

/**
 * The log, on standard error. Whatever is said goes through {@link SafeEvent} first, whichever library says it. Logback
 * finds this class by itself when the first logger is asked for, and then it is plain.
 */
public final class Logs extends ContextAwareBase implements Configurator {
    private static final String OWN = "rosinbook";
    private static final String PLAIN =
            "%d{yyyy-MM-dd'T'HH:mm:ss.SSSXXX} %-5level %logger{0} %replace(%X{requestId}){'(.+)', '[$1] '}%msg %kvp%n%ex";

    @Override
    public ExecutionStatus configure(LoggerContext logs) {
        set(logs, LogFormat.PLAIN);
        return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
    }

    /** Says everything in this form from now on; also what goes through the JDK's logging, and what a thread dies of. */
    public static void use(LogFormat format) {
        ILoggerFactory logs = LoggerFactory.getILoggerFactory();
        set((LoggerContext) logs, format);
        LogManager.getLogManager().reset();
        SLF4JBridgeHandler.install();
        Thread.setDefaultUncaughtExceptionHandler(
                (thread, problem) -> logs.getLogger(OWN).error("a thread ended", problem));
    }

    private static void set(LoggerContext logs, LogFormat format) {
        logs.reset();
        ConsoleAppender<ILoggingEvent> console = new ConsoleAppender<>();
        console.setContext(logs);
        console.setTarget(ConsoleTarget.SystemErr.getName());
        console.setEncoder(new SafeEncoder(format == LogFormat.JSON ? JsonLines.encoder(logs) : plain(logs)));
        console.getEncoder().setContext(logs);
        console.getEncoder().start();
        console.start();
        logs.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME).setLevel(Level.WARN);
        logs.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME).addAppender(console);
        logs.getLogger(OWN).setLevel(format == LogFormat.JSON ? Level.INFO : Level.WARN);
        // it warns of any request that is badly written; that is answered and counted
        logs.getLogger("org.eclipse.jetty.http").setLevel(Level.ERROR);
        // it warns that H2 is newer than what it was tried with
        logs.getLogger("org.flywaydb.core.internal.database.base.Database").setLevel(Level.ERROR);
    }

    private static Encoder<ILoggingEvent> plain(LoggerContext logs) {
        PatternLayout layout = new PatternLayout();
        layout.setContext(logs);
        layout.setPattern(PLAIN);
        layout.start();
        LayoutWrappingEncoder<ILoggingEvent> encoder = new LayoutWrappingEncoder<>();
        encoder.setContext(logs);
        encoder.setCharset(StandardCharsets.UTF_8);
        encoder.setLayout(layout);
        return encoder;
    }

    /** A stack trace without what the failure's own words might give away. */
    public static String trace(Throwable problem) {
        return ThrowableProxyUtil.asString(new SafeThrowable(new ThrowableProxy(problem)));
    }

    /** In one line the failure that led to all the others, without what its own words might give away. */
    public static String cause(Throwable problem) {
        Throwable first = problem;
        while (first.getCause() != null && first.getCause() != first) {
            first = first.getCause();
        }
        SafeThrowable safe = new SafeThrowable(new ThrowableProxy(first));
        return safe.getMessage() == null ? safe.getClassName() : safe.getClassName() + ": " + safe.getMessage();
    }
}
