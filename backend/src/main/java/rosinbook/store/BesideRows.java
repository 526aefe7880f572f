package rosinbook.store;

import static rosinbook.store.schema.Tables.RIG_STRING;
import static rosinbook.store.schema.Tables.SHEET;
import static rosinbook.store.schema.Tables.SHEET_LINK;
import static rosinbook.store.schema.Tables.SHEET_STYLE;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jooq.DSLContext;
import org.jooq.Record;
import rosinbook.notebook.Content;
import rosinbook.notebook.Rig;

/** Compares what is kept beside a sheet, to be asked, with what its content says. */
final class BesideRows {
    private final DSLContext sql;
    private final UUID notebookId;

    BesideRows(DSLContext sql, UUID notebookId) {
        this.sql = sql;
        this.notebookId = notebookId;
    }

    /** What does not agree with a sheet's newest content, such as {@code its styles}. */
    List<String> strayOfNewest(UUID sheetId, Content content) {
        List<String> stray = new ArrayList<>();
        if (!agreesWithRow(sheetId, content)) {
            stray.add("its title, day or state");
        }
        if (!styles(sheetId).equals(content.styles())) {
            stray.add("its styles");
        }
        Set<List<Object>> expected = new HashSet<>();
        content.links()
                .forEach((place, link) -> expected.add(link(
                        place, link.relation().name(), link.to().id(), link.to().revision())));
        if (!links(sheetId).equals(expected)) {
            stray.add("its links");
        }
        return stray;
    }

    private boolean agreesWithRow(UUID sheetId, Content content) {
        Record found = sql.select(SHEET.TITLE, SHEET.PLAYED, SHEET.HAPPENED_ON)
                .from(SHEET)
                .where(SHEET.ID.eq(sheetId))
                .and(SHEET.NOTEBOOK_ID.eq(notebookId))
                .fetchOne();
        Optional<LocalDate> day = content.day();
        return found != null
                && found.get(SHEET.TITLE).equals(content.title())
                && found.get(SHEET.PLAYED) == content.played()
                && (day.isEmpty() || day.get().equals(found.get(SHEET.HAPPENED_ON)));
    }

    private Set<String> styles(UUID sheetId) {
        return sql.select(SHEET_STYLE.STYLE)
                .from(SHEET_STYLE)
                .where(SHEET_STYLE.SHEET_ID.eq(sheetId))
                .and(SHEET_STYLE.NOTEBOOK_ID.eq(notebookId))
                .fetchSet(SHEET_STYLE.STYLE);
    }

    private Set<List<Object>> links(UUID sheetId) {
        return sql
                .select(SHEET_LINK.PLACE, SHEET_LINK.RELATION, SHEET_LINK.TO_ID, SHEET_LINK.TO_NUMBER)
                .from(SHEET_LINK)
                .where(SHEET_LINK.FROM_ID.eq(sheetId))
                .and(SHEET_LINK.NOTEBOOK_ID.eq(notebookId))
                .fetch(found -> link(found.value1(), found.value2(), found.value3(), found.value4()))
                .stream()
                .collect(Collectors.toSet());
    }

    private static List<Object> link(String place, String relation, UUID to, Integer number) {
        return List.of(place, relation, to, Optional.ofNullable(number));
    }

    /** Whether the strings kept for a rig's revision are those of its content. */
    boolean agreesWithStrings(UUID rigId, int revision, Rig rig) {
        Map<Integer, List<Object>> kept = sql.selectFrom(RIG_STRING)
                .where(RIG_STRING.RIG_ID.eq(rigId))
                .and(RIG_STRING.NOTEBOOK_ID.eq(notebookId))
                .and(RIG_STRING.REVISION_NUMBER.eq(revision))
                .fetchMap(
                        RIG_STRING.STRING_NUMBER,
                        found -> setting(
                                found.get(RIG_STRING.INPUT_NUMBER),
                                found.get(RIG_STRING.SENSITIVITY),
                                found.get(RIG_STRING.TRIM_DECIBELS),
                                found.get(RIG_STRING.SET_ON)));
        Map<Integer, List<Object>> expected = rig.assignments().entrySet().stream()
                .collect(Collectors.toMap(
                        each -> Integer.parseInt(each.getKey()),
                        each -> setting(
                                each.getValue().input(),
                                each.getValue().sensitivity(),
                                each.getValue().trimDecibels(),
                                rig.date())));
        return kept.equals(expected);
    }

    private static List<Object> setting(Integer input, Double sensitivity, Double trim, LocalDate day) {
        return List.of(
                Optional.ofNullable(input),
                Optional.ofNullable(sensitivity),
                Optional.ofNullable(trim),
                Optional.ofNullable(day));
    }
}
