package rosinbook.web;

import static j2html.TagCreator.body;
import static j2html.TagCreator.document;
import static j2html.TagCreator.each;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.head;
import static j2html.TagCreator.html;
import static j2html.TagCreator.input;
import static j2html.TagCreator.link;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.title;

import j2html.tags.DomContent;
import j2html.tags.specialized.InputTag;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** What the pages before the door have in common. */
final class DoorPage {
    private DoorPage() {}

    /** A page of these parts; those that are null are left out. */
    static String of(String what, DomContent... parts) {
        List<DomContent> shown = Arrays.stream(parts).filter(Objects::nonNull).toList();
        return document(html(
                        head(
                                meta().withCharset("utf-8"),
                                meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                                meta().withName("color-scheme").withContent("light dark"),
                                title(what + ": Rosinbook"),
                                link().withRel("icon").withHref("/icon.svg"),
                                link().withRel("stylesheet").withHref("/styles/share.css")),
                        body(main(h1("Rosinbook"), each(shown, part -> part))))
                .withLang("en"));
    }

    static InputTag passphrase(String autocomplete) {
        return input().withId("passphrase")
                .withName("passphrase")
                .withType("password")
                .attr("autocomplete", autocomplete)
                .isRequired();
    }
}
