package rosinbook.circuit;

import java.util.List;

/**
 * One thing the check has to say.
 *
 * @param code the rule
 * @param severity of that rule
 * @param place the pin, route or connector concerned, in words; with the switch positions when only some are concerned
 * @param routes ids of the routes concerned; empty when it is about something missing
 * @param sentence what is wrong
 * @param remedy what to do
 */
public record Finding(Rule code, Severity severity, String place, List<String> routes, String sentence, String remedy) {
    /** Copies the list. */
    public Finding {
        routes = List.copyOf(routes);
    }

    Finding at(String switches) {
        return new Finding(code, severity, place + ", " + switches, routes, sentence, remedy);
    }
}
