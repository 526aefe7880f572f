package rosinbook.share;

import static j2html.TagCreator.b;
import static j2html.TagCreator.body;
import static j2html.TagCreator.div;
import static j2html.TagCreator.document;
import static j2html.TagCreator.each;
import static j2html.TagCreator.footer;
import static j2html.TagCreator.h1;
import static j2html.TagCreator.h2;
import static j2html.TagCreator.h3;
import static j2html.TagCreator.head;
import static j2html.TagCreator.header;
import static j2html.TagCreator.html;
import static j2html.TagCreator.iff;
import static j2html.TagCreator.join;
import static j2html.TagCreator.li;
import static j2html.TagCreator.link;
import static j2html.TagCreator.main;
import static j2html.TagCreator.meta;
import static j2html.TagCreator.ol;
import static j2html.TagCreator.p;
import static j2html.TagCreator.section;
import static j2html.TagCreator.span;
import static j2html.TagCreator.style;
import static j2html.TagCreator.table;
import static j2html.TagCreator.tbody;
import static j2html.TagCreator.td;
import static j2html.TagCreator.text;
import static j2html.TagCreator.th;
import static j2html.TagCreator.thead;
import static j2html.TagCreator.title;
import static j2html.TagCreator.tr;

import j2html.tags.ContainerTag;
import j2html.tags.DomContent;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import rosinbook.notebook.Words;
import rosinbook.readout.RecipeReadout;
import rosinbook.share.ShareView.ItemView;
import rosinbook.share.ShareView.RecipeView;
import rosinbook.share.ShareView.RigView;
import rosinbook.share.ShareView.SetView;
import rosinbook.share.ShareView.StringView;

/** A share as HTML, for the link and for a file that opens without a network. */
public final class SharePage {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
    private static final String STYLES = "/styles/share.css";

    private SharePage() {}

    /** The page behind the link; its styles come from the server. */
    public static String page(ShareView view) {
        return whole(view.title(), ofTheServer(), content(view));
    }

    /** One file with everything in it. */
    public static String file(ShareView view) {
        return whole(view.title(), style(styles()), content(view));
    }

    /** What a link that opens nothing shows; the same for a wrong, a closed and an expired one. */
    public static String closed() {
        return whole(
                "This link does not open anything",
                ofTheServer(),
                main(
                        h1("This link does not open anything"),
                        p("It may have been closed, or run out. Ask whoever sent it for a new one.")));
    }

    /** Styles, and an icon: without one a browser looks for it where there is none. */
    private static DomContent ofTheServer() {
        return join(
                link().withRel("icon").withHref("/icon.svg").withType("image/svg+xml"),
                link().withRel("stylesheet").withHref(STYLES));
    }

    private static String whole(String title, DomContent linked, DomContent content) {
        return document(html(
                        head(
                                meta().withCharset("utf-8"),
                                meta().withName("viewport").withContent("width=device-width, initial-scale=1"),
                                meta().withName("robots").withContent("noindex, nofollow"),
                                meta().withName("referrer").withContent("no-referrer"),
                                meta().withName("color-scheme").withContent("light dark"),
                                title(title),
                                linked),
                        body(content))
                .withLang("en"));
    }

    private static String styles() {
        try (InputStream file = SharePage.class.getResourceAsStream("/frontend" + STYLES)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException problem) {
            throw new IllegalStateException("the share's styles cannot be read", problem);
        }
    }

    private static DomContent content(ShareView view) {
        return main(
                header(h1(view.title()), standing(view)),
                view.setlist().map(SharePage::set).orElse(null),
                view.recipe().map(SharePage::lines).orElse(null),
                view.rig().map(rig -> rig(rig, false)).orElse(null),
                footer(p("A read-only page from a player's Rosinbook. Turn synth and amplifier down before connecting"
                        + " anything; if unsure about wiring, ask a qualified technician.")));
    }

    private static DomContent standing(ShareView view) {
        String saved = "revision " + view.revision() + ", saved "
                + DAY.format(LocalDate.ofInstant(view.asOf(), ZoneOffset.UTC));
        return p(view.keptUpToDate() ? "Kept up to date: " + saved : "As it was: " + saved)
                .withClass("standing");
    }

    private static DomContent set(SetView set) {
        String state = set.played() ? "played" : "planned";
        String place = set.place().isEmpty() ? "" : ", " + set.place();
        return div(
                p(DAY.format(set.date()) + place + " (" + state + ")").withClass("when"),
                iff(!set.notes().isEmpty(), p(set.notes()).withClass("notes")),
                set.rig().map(rig -> rig(rig, true)).orElse(null),
                ol(each(set.items(), SharePage::item)).withClass("set"));
    }

    private static DomContent item(ItemView item) {
        List<String> facts = new ArrayList<>();
        add(facts, item.composer());
        add(facts, item.key());
        add(facts, item.meter());
        item.tempoBpm().ifPresent(bpm -> facts.add(Words.number(bpm) + " bpm"));
        return li(
                h2(span(Integer.toString(item.position())).withClass("position"), span(" " + item.title())),
                iff(!facts.isEmpty(), p(String.join(" · ", facts)).withClass("facts")),
                iff(!item.note().isEmpty(), p(item.note()).withClass("notes")),
                item.rig().map(rig -> rig(rig, true)).orElse(null),
                item.recipe().map(SharePage::recipe).orElse(null));
    }

    private static void add(List<String> facts, String fact) {
        if (!fact.isEmpty()) {
            facts.add(fact);
        }
    }

    private static DomContent recipe(RecipeView recipe) {
        return section(
                        h3("Sound: " + recipe.title()),
                        recipe.startingPoint()
                                .map(start -> p("On top of “" + start + "”; what this piece changes stands in bold.")
                                        .withClass("facts"))
                                .orElse(null),
                        each(layers(recipe).entrySet(), layer -> layer(layer.getKey(), layer.getValue(), recipe)))
                .withClass("recipe");
    }

    /** Lines by the layer they belong to, in order. */
    private static Map<String, List<RecipeReadout.Line>> layers(RecipeView recipe) {
        Map<String, List<RecipeReadout.Line>> layers = new LinkedHashMap<>();
        for (RecipeReadout.Line line : recipe.lines()) {
            layers.computeIfAbsent(line.where().get(0), layer -> new ArrayList<>())
                    .add(line);
        }
        return layers;
    }

    private static DomContent layer(String name, List<RecipeReadout.Line> lines, RecipeView recipe) {
        List<DomContent> values = new ArrayList<>();
        for (RecipeReadout.Line line : lines) {
            String label = line.where().size() < 2
                    ? ""
                    : String.join(", ", line.where().subList(1, line.where().size())) + " ";
            boolean isSwitch = line.pointer().endsWith("/on");
            String text = (isSwitch ? "" : label) + line.text() + (line.unit().isEmpty() ? "" : " " + line.unit());
            boolean own = line.from() == RecipeReadout.From.PIECE
                    && recipe.startingPoint().isPresent();
            values.add(text(values.isEmpty() ? " " : " · "));
            values.add(own ? b(text).withClass("own") : span(text));
        }
        return p(span(name).withClass("layer"), each(values, value -> value));
    }

    private static DomContent lines(RecipeView recipe) {
        return div(
                recipe.startingPoint()
                        .map(start -> p("On top of “" + start + "”; what this piece changes is marked “here”.")
                                .withClass("facts"))
                        .orElse(null),
                table(
                        thead(tr(th("Setting"), th("Value"), th("From"))),
                        tbody(each(recipe.lines(), line -> line(line, recipe.startingPoint())))));
    }

    private static DomContent line(RecipeReadout.Line line, Optional<String> startingPoint) {
        boolean own = line.from() == RecipeReadout.From.PIECE && startingPoint.isPresent();
        return tr(
                td(String.join(", ", line.where())),
                value(line.text(), line.unit()),
                td(own ? "here" : startingPoint.orElse("")).withClass(own ? "own" : "start"));
    }

    private static ContainerTag<?> value(String text, String unit) {
        return td(
                        span(text).withClass("number"),
                        unit.isEmpty() ? null : span(" " + unit).withClass("unit"))
                .withClass("value");
    }

    private static DomContent rig(RigView rig, boolean withTitle) {
        return section(
                        iff(withTitle, h2("Rig: " + rig.title())),
                        p(rig.instrument() + " into " + rig.synth()).withClass("facts"),
                        table(
                                thead(tr(th("String"), th("Input"), th("Sensitivity"), th("Trim"))),
                                tbody(each(rig.strings(), SharePage::string))),
                        iff(!rig.notes().isEmpty(), p(rig.notes()).withClass("notes")))
                .withClass("rig");
    }

    private static DomContent string(StringView string) {
        return tr(
                td(string.string()
                        + string.note().map(note -> " (" + note + ")").orElse("")),
                td(string.input().map(Object::toString).orElse("none")),
                td(string.sensitivity().map(Words::number).orElse("not set")).withClass("value"),
                value(Words.number(string.trimDecibels()), "dB"));
    }
}
