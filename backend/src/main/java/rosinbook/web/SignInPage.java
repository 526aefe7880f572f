package rosinbook.web;

import static j2html.TagCreator.button;
import static j2html.TagCreator.form;
import static j2html.TagCreator.input;
import static j2html.TagCreator.label;
import static j2html.TagCreator.p;

import java.util.Optional;
import rosinbook.access.PlayerName;

/** The page that asks for name and passphrase. */
final class SignInPage {
    private SignInPage() {}

    /**
     * The page.
     *
     * @param name as it was typed before; empty at first
     * @param asked the page to go on to
     */
    static String page(String name, String asked, Optional<String> trouble) {
        return DoorPage.of(
                "Sign in",
                trouble.map(words -> p(words).attr("role", "alert")).orElse(null),
                form(
                                label("Name").withFor("name"),
                                input().withId("name")
                                        .withName("name")
                                        .withValue(name)
                                        .attr("autocomplete", "username")
                                        .attr("autocapitalize", "off")
                                        .attr("maxlength", PlayerName.LONGEST)
                                        .isRequired()
                                        .withCondAutofocus(name.isEmpty()),
                                label("Passphrase").withFor("passphrase"),
                                DoorPage.passphrase("current-password").withCondAutofocus(!name.isEmpty()),
                                input().withType("hidden")
                                        .withName(AskedPage.NAME)
                                        .withValue(asked),
                                button("Sign in"))
                        .withMethod("post")
                        .withAction("/sign-in"),
                p("No account yet, or the passphrase forgotten? Ask the keeper of this Rosinbook for a link."));
    }
}
