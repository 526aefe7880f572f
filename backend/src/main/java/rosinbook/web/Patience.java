package rosinbook.web;

import java.time.Duration;
import rosinbook.limit.Limit;

/**
 * How long this service waits, and how much it does at once. Tests are less patient than {@link #USUAL}.
 *
 * @param silence for the next byte
 * @param sending for a whole body, and longer the more of it has come; as long for an answer to be read, and twice as long
 *     for a whole head
 * @param waiting for a free bench
 * @param computing for one computation of a bench
 * @param connections that are open at once
 * @param bodies that are read at once
 * @param strangers of whom bodies are read at once, where players sign in; beside the others
 */
record Patience(
        Duration silence,
        Duration sending,
        Duration waiting,
        Duration computing,
        int connections,
        int bodies,
        int strangers) {
    static final Patience USUAL = new Patience(
            Duration.ofSeconds(Limit.SILENCE_SECONDS.most()),
            Duration.ofSeconds(Limit.SENDING_SECONDS.most()),
            Duration.ofSeconds(Limit.WAITING_SECONDS.most()),
            Duration.ofSeconds(Limit.COMPUTING_SECONDS.most()),
            Limit.CONNECTIONS.count(),
            Limit.BODIES_AT_ONCE.count(),
            Limit.STRANGERS_AT_ONCE.count());
}
