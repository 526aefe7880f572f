package rosinbook.web;

import static j2html.TagCreator.h2;
import static j2html.TagCreator.p;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Pattern;

/** A problem as a page, for people who opened an address in a browser. */
final class ProblemPage {
    static final String MEDIA_TYPE = "text/html; charset=utf-8";

    private static final Pattern FOR_PROGRAMS = Pattern.compile("/api(/.*)?|/s/[^/]+/data");

    private ProblemPage() {}

    /**
     * Whether somebody wants to read it, and no program.
     *
     * @param path that was asked for
     * @param accept the header of that name; null if there is none
     */
    static boolean isWanted(String path, String accept) {
        return accept != null
                && !FOR_PROGRAMS.matcher(path).matches()
                && accept.toLowerCase(Locale.ROOT).contains("text/html");
    }

    static byte[] page(Problem problem, String requestId) {
        return DoorPage.of(
                        problem.title(),
                        h2(problem.title()),
                        p(problem.getMessage()),
                        p("If you ask for help, say that the request was " + requestId + "."))
                .getBytes(StandardCharsets.UTF_8);
    }
}
