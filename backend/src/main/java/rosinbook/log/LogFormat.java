package rosinbook.log;

/** How log lines look. */
public enum LogFormat {
    /** For a person at a terminal: warnings and errors only. */
    PLAIN,
    /** For a server: one JSON object a line, with a line for every request. */
    JSON
}
