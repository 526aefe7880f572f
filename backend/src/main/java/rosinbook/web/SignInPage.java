package rosinbook.web;

import static j2html.TagCreator.body;
import static j2html.TagCreator.button;
import static j2html.TagCreator.document;
import static j2html.TagCreator.form;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.head;
import static j2html.TagCreator.html;
import static j2html.TagCreator.input;
import static j2html.TagCreator.label;
import static j2html.TagCreator.link;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.p;
import static j2html.TagCreator.title;

import java.util.Optional;

/** The page that asks for the passphrase. */
final class SignInPage {
    private SignInPage() {}

    static String page(Optional<String> trouble) {
        return document(html(
                        head(
                                meta().withCharset("utf-8"),
                                meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                                meta().withName("color-scheme").withContent("light dark"),
                                title("Sign in: Rosinbook"),
                                link().withRel("stylesheet").withHref("/styles/share.css")),
                        body(main(
                                h1("Rosinbook"),
                                trouble.map(words -> p(words).attr("role", "alert"))
                                        .orElse(null),
                                form(
                                                label("Passphrase").withFor("passphrase"),
                                                input().withId("passphrase")
                                                        .withName("passphrase")
                                                        .withType("password")
                                                        .attr("autocomplete", "current-password")
                                                        .isRequired()
                                                        .isAutofocus(),
                                                button("Sign in"))
                                        .withMethod("post")
                                        .withAction("/sign-in"))))
                .withLang("en"));
    }
}
