package rosinbook.web;

import static j2html.TagCreator.a;
import static j2html.TagCreator.button;
import static j2html.TagCreator.form;
import static j2html.TagCreator.input;
import static j2html.TagCreator.label;
import static j2html.TagCreator.p;

import java.util.Optional;
import rosinbook.access.Passphrase;
import rosinbook.access.Player;

/** The page on which an invited player chooses a passphrase. */
final class JoinPage {
    private JoinPage() {}

    static String page(String token, Player player, Optional<String> trouble) {
        return DoorPage.of(
                "Join",
                p("Welcome, " + player.name() + ". Choose a passphrase: " + Passphrase.SHORTEST
                        + " characters or more. A few words of your own are easiest to keep in mind."),
                trouble.map(words -> p(words).attr("role", "alert")).orElse(null),
                form(
                                input().withType("hidden")
                                        .withName("name")
                                        .withValue(player.name().text())
                                        .attr("autocomplete", "username"),
                                label("Passphrase").withFor("passphrase"),
                                DoorPage.passphrase("new-password")
                                        .attr("minlength", Passphrase.SHORTEST)
                                        .attr("maxlength", Passphrase.LONGEST)
                                        .isAutofocus(),
                                button("Join"))
                        .withMethod("post")
                        .withAction("/join/" + token));
    }

    /** Used, out of date, or never made: the same words for each. */
    static String over() {
        return DoorPage.of(
                "Join",
                p("This invitation was used or is out of date; ask the keeper of this Rosinbook for a new one."),
                p(a("Sign in").withHref("/sign-in")));
    }
}
