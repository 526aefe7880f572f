package rosinbook.notebook;

import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import java.io.Serial;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** The limits of JSON as it is read, each refused by its own name. */
final class JsonLimits extends StreamReadConstraints {
    @Serial
    private static final long serialVersionUID = 1;

    /** Escapes are counted before they are undone, so a text may be twice as long here as where it is kept. */
    private static final int RAW_TEXT_LENGTH = 2 * Limit.TEXT_LENGTH.count();

    /** A limit was passed while reading. */
    static final class Passed extends StreamConstraintsException {
        @Serial
        private static final long serialVersionUID = 1;

        private final transient PastLimit limit;

        private Passed(PastLimit limit) {
            super(limit.getMessage());
            this.limit = limit;
        }

        PastLimit limit() {
            return limit;
        }
    }

    JsonLimits() {
        super(
                Limit.JSON_DEPTH.count(),
                StreamReadConstraints.DEFAULT_MAX_DOC_LEN,
                Limit.NUMBER_LENGTH.count(),
                RAW_TEXT_LENGTH,
                Limit.NAME_LENGTH.count(),
                Limit.JSON_TOKENS.most());
    }

    @Override
    public void validateNestingDepth(int depth) throws StreamConstraintsException {
        check(
                Limit.JSON_DEPTH,
                depth,
                getMaxNestingDepth(),
                "objects and lists lie " + depth + " deep within one another");
    }

    @Override
    public void validateTokenCount(long count) throws StreamConstraintsException {
        check(Limit.JSON_TOKENS, count, getMaxTokenCount(), "there are too many names and values");
    }

    @Override
    public void validateNameLength(int length) throws StreamConstraintsException {
        check(Limit.NAME_LENGTH, length, getMaxNameLength(), "a field's name is too long");
    }

    @Override
    public void validateStringLength(int length) throws StreamConstraintsException {
        check(Limit.TEXT_LENGTH, length, getMaxStringLength(), "a text is too long");
    }

    @Override
    public void validateFPLength(int length) throws StreamConstraintsException {
        check(Limit.NUMBER_LENGTH, length, getMaxNumberLength(), "a number has " + length + " characters");
    }

    @Override
    public void validateIntegerLength(int length) throws StreamConstraintsException {
        check(Limit.NUMBER_LENGTH, length, getMaxNumberLength(), "a number has " + length + " characters");
    }

    private static void check(Limit limit, long given, long most, String what) throws Passed {
        if (given > most) {
            throw new Passed(new PastLimit(limit, what + "; " + limit.sentence()));
        }
    }
}
