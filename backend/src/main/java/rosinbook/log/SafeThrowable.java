package rosinbook.log;

import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.StackTraceElementProxy;
import ch.qos.logback.classic.spi.ThrowableProxy;
import java.io.IOException;
import java.nio.file.FileSystemException;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;

/**
 * A failure told by its type and place. Its own words are left out, for they may repeat what was being worked on: databases
 * and parsers quote values, sheets and tokens among them. Kept are an SQL failure's codes, what the operating system says,
 * and what the JVM says of our code.
 */
final class SafeThrowable implements IThrowableProxy {
    private static final List<Class<? extends Throwable>> OF_THE_JVM = List.of(
            NullPointerException.class,
            ClassCastException.class,
            ArithmeticException.class,
            IndexOutOfBoundsException.class,
            VirtualMachineError.class,
            LinkageError.class);

    private final IThrowableProxy told;

    SafeThrowable(IThrowableProxy told) {
        this.told = told;
    }

    private static String words(Throwable problem) {
        if (problem instanceof SQLException sql) {
            return "SQLSTATE " + sql.getSQLState() + ", code " + sql.getErrorCode();
        }
        if (problem instanceof FileSystemException file) {
            return file.getReason();
        }
        if (problem.getClass() == IOException.class && isOfTheSystem(problem)
                || OF_THE_JVM.stream().anyMatch(type -> type.isInstance(problem))) {
            return problem.getMessage();
        }
        return null;
    }

    private static boolean isOfTheSystem(Throwable problem) {
        StackTraceElement[] trace = problem.getStackTrace();
        return trace.length > 0 && trace[0].isNativeMethod() && "java.base".equals(trace[0].getModuleName());
    }

    @Override
    public String getMessage() {
        return told instanceof ThrowableProxy known ? words(known.getThrowable()) : null;
    }

    @Override
    public String getClassName() {
        return told.getClassName();
    }

    @Override
    public StackTraceElementProxy[] getStackTraceElementProxyArray() {
        return told.getStackTraceElementProxyArray();
    }

    @Override
    public int getCommonFrames() {
        return told.getCommonFrames();
    }

    @Override
    public IThrowableProxy getCause() {
        return told.getCause() == null ? null : new SafeThrowable(told.getCause());
    }

    @Override
    public IThrowableProxy[] getSuppressed() {
        return Arrays.stream(told.getSuppressed()).map(SafeThrowable::new).toArray(IThrowableProxy[]::new);
    }

    @Override
    public boolean isCyclic() {
        return told.isCyclic();
    }
}
