package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static rosinbook.store.schema.Tables.BLOB;
import static rosinbook.store.schema.Tables.BLOB_PART;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rosinbook.notebook.Blob;
import rosinbook.notebook.Content;
import rosinbook.notebook.ContentJson;
import rosinbook.notebook.EditedMeanwhile;
import rosinbook.notebook.InvalidContent;
import rosinbook.notebook.Kind;
import rosinbook.notebook.NoSuchSheet;
import rosinbook.notebook.Notebook;
import rosinbook.notebook.Pages;
import rosinbook.notebook.Revision;
import rosinbook.notebook.Saved;
import rosinbook.notebook.Setlist;
import rosinbook.notebook.TakeSheet;

/** What keeping means, on whichever database. */
abstract class SheetStoreContract {
    private static final Notebook.Note NOTE = new Notebook.Note("Mira", "after rehearsal");

    private final Clock clock = Clock.fixed(Instant.parse("2026-11-12T20:00:00.123456Z"), ZoneOffset.UTC);
    private Database database;
    private DatabaseSheetStore store;
    private Notebook notebook;

    /** A fresh, empty database. */
    abstract Database fresh();

    @BeforeEach
    void open() {
        database = fresh();
        store = DatabaseSheetStore.onlyNotebook(database, clock.instant());
        notebook = new Notebook(store, clock);
    }

    @AfterEach
    void close() {
        if (database != null) {
            database.close();
        }
    }

    private static JsonNode json(String text) {
        return ContentJson.parse(text.replace('\'', '"').getBytes(StandardCharsets.UTF_8));
    }

    private UUID create(Kind kind, String content) {
        UUID id = UUID.randomUUID();
        notebook.create(kind, id, json(content), NOTE, Optional.empty());
        return id;
    }

    private Saved save(Kind kind, UUID id, int basedOn, String content) {
        return notebook.save(kind, id, basedOn, json(content), NOTE, Optional.empty(), Set.of());
    }

    private UUID piece(String title) {
        return create(Kind.PIECES, "{'title':'" + title + "','styles':['reel'],'tempoBpm':120}");
    }

    @Test
    void what_was_saved_is_read_back_with_who_when_and_why() {
        UUID id = piece("The Heron on the Weir");
        Revision found = notebook.newest(Kind.PIECES, id);
        assertEquals(1, found.number());
        assertEquals("Mira", found.savedBy());
        assertEquals("after rehearsal", found.reason());
        assertEquals(clock.instant(), found.savedAt());
        assertEquals(ContentJson.sha256(ContentJson.canonical(found.json())), found.sha256());
        assertTrue(found.parent().isEmpty());
    }

    @Test
    void every_earlier_state_stays() {
        UUID id = piece("One");
        save(Kind.PIECES, id, 1, "{'title':'Two'}");
        save(Kind.PIECES, id, 2, "{'title':'Three'}");
        assertEquals("One", notebook.revision(Kind.PIECES, id, 1).content().title());
        assertEquals("Two", notebook.revision(Kind.PIECES, id, 2).content().title());
        assertEquals(
                List.of(3, 2, 1),
                notebook.look(pages -> pages.history(id, 10, Optional.empty())).items().stream()
                        .map(Revision::number)
                        .toList());
        assertEquals(
                List.of(3, 2, 1),
                notebook.look(pages -> pages.history(id, 10, Optional.of(99))).items().stream()
                        .map(Revision::number)
                        .toList(),
                "from beyond the newest it goes back from the newest");
        assertEquals(Optional.of(2), notebook.newest(Kind.PIECES, id).parent());
    }

    @Test
    void a_save_that_changes_nothing_adds_no_revision() {
        UUID id = create(Kind.PIECES, "{'title':'One'}");
        assertEquals(
                1,
                save(Kind.PIECES, id, 1, "{'title':'One','composer':''}")
                        .revision()
                        .number());
    }

    @Test
    void sending_a_new_sheet_twice_makes_one() {
        UUID id = UUID.randomUUID();
        JsonNode content = json("{'title':'One'}");
        notebook.create(Kind.PIECES, id, content, NOTE, Optional.empty());
        notebook.create(Kind.PIECES, id, content, NOTE, Optional.empty());
        assertEquals(1, notebook.newest(Kind.PIECES, id).number());
        var problem = assertThrows(
                InvalidContent.class,
                () -> notebook.create(Kind.PIECES, id, json("{'title':'Other'}"), NOTE, Optional.empty()));
        assertEquals("/id", problem.pointer());
    }

    @Test
    void saves_that_crossed_without_touching_are_both_kept() {
        UUID id = piece("One");
        save(Kind.PIECES, id, 1, "{'title':'One','styles':['reel'],'tempoBpm':112}");
        Saved second = save(Kind.PIECES, id, 1, "{'title':'One','styles':['reel'],'tempoBpm':120,'key':'D'}");
        assertEquals(3, second.revision().number());
        assertEquals(112, second.revision().json().path("tempoBpm").asInt());
        assertEquals("D", second.revision().json().path("key").asText());
        assertEquals(
                "/tempoBpm",
                second.mergedWith().orElseThrow().changes().get(0).at().toString());
    }

    @Test
    void saves_that_touch_change_nothing_and_show_both_values() {
        UUID id = piece("One");
        save(Kind.PIECES, id, 1, "{'title':'One','styles':['reel'],'tempoBpm':112}");
        var problem = assertThrows(
                EditedMeanwhile.class,
                () -> save(Kind.PIECES, id, 1, "{'title':'One','styles':['reel'],'tempoBpm':100,'key':'D'}"));
        assertEquals(2, problem.current().number());
        var conflict = problem.merge().conflicts().get(0);
        assertEquals("/tempoBpm", conflict.at().toString());
        assertEquals(112, conflict.theirs().orElseThrow().asInt());
        assertEquals(100, conflict.yours().orElseThrow().asInt());
        assertEquals("D", problem.merge().merged().path("key").asText(), "what does not touch is merged already");
        assertEquals(2, notebook.newest(Kind.PIECES, id).number());
    }

    @Test
    void an_earlier_state_comes_back_as_a_new_revision() {
        UUID id = piece("One");
        save(Kind.PIECES, id, 1, "{'title':'Two'}");
        Revision restored = notebook.restore(Kind.PIECES, id, 1, 2, new Notebook.Note("", ""))
                .revision();
        assertEquals(3, restored.number());
        assertEquals("One", restored.content().title());
        assertEquals("Back to revision 1", restored.reason());
        assertThrows(EditedMeanwhile.class, () -> notebook.restore(Kind.PIECES, id, 1, 2, NOTE));
    }

    @Test
    void a_sheet_is_not_found_under_another_kind() {
        UUID id = piece("One");
        var problem = assertThrows(NoSuchSheet.class, () -> notebook.newest(Kind.RIGS, id));
        assertTrue(problem.getMessage().contains("no rig"), problem.getMessage());
        assertThrows(NoSuchSheet.class, () -> notebook.revision(Kind.PIECES, id, 2));
    }

    @Test
    void naming_a_sheet_that_is_not_there_is_refused_where_it_stands() {
        UUID id = UUID.randomUUID();
        var problem = assertThrows(
                InvalidContent.class,
                () -> create(
                        Kind.SETLISTS,
                        "{'title':'x','date':'2026-11-12','items':{'a':{'order':1,'piece':'" + id + "'}}}"));
        assertEquals("/items/a/piece", problem.pointer());
    }

    @Test
    void lists_find_words_in_titles_styles_and_notes_and_go_on_page_by_page() {
        for (String title : List.of("Ash Grove Reel", "Brook Reel", "Cold Reel", "Dawn Air")) {
            piece(title);
        }
        create(Kind.PIECES, "{'title':'Elm','notes':'wants a REEL feel'}");
        List<String> titles = new ArrayList<>();
        Optional<String> after = Optional.empty();
        do {
            Optional<String> from = after;
            Pages.Page<Revision> page = notebook.look(
                    pages -> pages.list(new Pages.Query(Optional.of(Kind.PIECES), "reel", Optional.empty(), from, 2)));
            page.items().forEach(item -> titles.add(item.content().title()));
            after = page.next();
        } while (after.isPresent());
        assertEquals(List.of("Ash Grove Reel", "Brook Reel", "Cold Reel", "Dawn Air", "Elm"), titles);
        assertEquals(
                4,
                notebook.look(pages -> pages.list(new Pages.Query(
                                Optional.of(Kind.PIECES), "", Optional.of("reel"), Optional.empty(), 50)))
                        .items()
                        .size());
        assertEquals(4, notebook.look(Pages::styles).get("reel"));
    }

    @Test
    void a_search_takes_signs_that_sql_reads_otherwise_as_they_are() {
        piece("100% wool");
        piece("under_score");
        for (String word : List.of("%", "_", "'", "\\", "100%")) {
            int expected = word.equals("100%") || word.equals("%") || word.equals("_") ? 1 : 0;
            assertEquals(
                    expected,
                    notebook.look(pages -> pages.list(new Pages.Query(
                                    Optional.of(Kind.PIECES), word, Optional.empty(), Optional.empty(), 50)))
                            .items()
                            .size(),
                    word);
        }
    }

    private UUID rig() {
        UUID instrument = create(
                Kind.INSTRUMENTS,
                "{'title':'Violin','strings':{'1':{'note':'E5'},'2':{'note':'A4'},'3':{'note':'D4'},'4':{'note':'G3'}}}");
        UUID synth = create(Kind.SYNTHS, "{'title':'Synth','sensitivityScale':{'min':0,'max':100}}");
        return create(Kind.RIGS, rigContent(instrument, synth, 20));
    }

    private static String rigContent(UUID instrument, UUID synth, int sensitivity) {
        return "{'title':'Rig','date':'2026-11-12','instrument':{'id':'" + instrument + "'},'synth':{'id':'" + synth
                + "'},'assignments':{'1':{'input':1,'sensitivity':" + sensitivity + "},'2':{'input':2}}}";
    }

    @Test
    void a_string_set_to_minus_nothing_is_set_to_nothing() {
        ObjectNode content = notebook.newest(Kind.RIGS, rig()).json().deepCopy();
        content.withObject("/assignments/1").put("sensitivity", -0.0).put("trimDecibels", -0.0);
        create(Kind.RIGS, content.toString());
        assertEquals(
                List.of(),
                new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK).verify().damages());
    }

    @Test
    void a_rig_holds_its_gear_at_exact_revisions_and_a_strings_history_is_told() {
        UUID rig = rig();
        Revision first = notebook.newest(Kind.RIGS, rig);
        assertEquals(1, first.json().path("instrument").path("revision").asInt());
        ObjectNode changed = first.json().deepCopy();
        changed.withObject("/assignments/1").put("sensitivity", 23);
        notebook.save(Kind.RIGS, rig, 1, changed, NOTE, Optional.empty(), Set.of());
        var history = notebook.look(pages -> pages.stringHistory(rig));
        assertEquals(
                List.of(Optional.of(20.0), Optional.of(23.0)),
                history.get(1).stream().map(Pages.StringSetting::sensitivity).toList());
        assertEquals(Optional.empty(), history.get(2).get(0).sensitivity());
    }

    @Test
    void a_rig_and_its_log_entry_are_saved_together_or_not_at_all() {
        UUID rig = rig();
        ObjectNode changed = notebook.newest(Kind.RIGS, rig).json().deepCopy();
        changed.withObject("/assignments/1").put("sensitivity", 23);
        var problem = assertThrows(
                InvalidContent.class,
                () -> notebook.save(
                        Kind.RIGS, rig, 1, changed, NOTE, Optional.of(json("{'text':'no date'}")), Set.of()));
        assertEquals("/log/date", problem.pointer());
        assertEquals(1, notebook.newest(Kind.RIGS, rig).number(), "nothing was saved");
        Saved saved = notebook.save(
                Kind.RIGS,
                rig,
                1,
                changed,
                NOTE,
                Optional.of(json("{'date':'2026-11-12','text':'E string calmer','felt':'good'}")),
                Set.of());
        Revision log = notebook.newest(Kind.LOG, saved.logEntry().orElseThrow());
        assertEquals(2, log.json().at("/about/rigs/reference/revision").asInt());
        assertEquals(rig.toString(), log.json().at("/about/rigs/reference/id").asText());
    }

    @Test
    void followers_go_on_with_their_starting_point_unless_they_stay_pinned() {
        UUID piece = piece("One");
        UUID start = create(Kind.RECIPES, "{'title':'Everyday','settings':{'straight':{'parameters':{'level':80}}}}");
        String following = "{'title':'%s','piece':'" + piece + "','follows':{'id':'" + start + "'},'settings':{}}";
        UUID goes = create(Kind.RECIPES, following.formatted("goes"));
        UUID stays = create(Kind.RECIPES, following.formatted("stays"));
        Saved saved = notebook.save(
                Kind.RECIPES,
                start,
                1,
                json("{'title':'Everyday','settings':{'straight':{'parameters':{'level':70}}}}"),
                NOTE,
                Optional.empty(),
                Set.of(stays));
        assertEquals(List.of(goes), saved.followedOn());
        assertEquals(70, level(goes));
        assertEquals(80, level(stays));
        assertEquals(80, level(goes, 1), "the earlier state still resolves as it did");
    }

    private int level(UUID recipe) {
        return level(recipe, notebook.newest(Kind.RECIPES, recipe).number());
    }

    private int level(UUID recipe, int number) {
        return notebook.look(pages -> rosinbook.notebook.Recipes.resolve(
                        pages, pages.revision(recipe, number).orElseThrow())
                .json()
                .at("/straight/parameters/level")
                .asInt());
    }

    @Test
    void a_starting_point_cannot_change_so_that_a_follower_breaks() {
        UUID piece = piece("One");
        UUID start = create(Kind.RECIPES, "{'title':'Everyday','settings':{'voices':{'a':{'name':'Pad','order':1}}}}");
        create(
                Kind.RECIPES,
                "{'title':'Follower','piece':'" + piece + "','follows':{'id':'" + start
                        + "'},'settings':{'voices':{'a':{'order':2}}}}");
        var problem = assertThrows(
                InvalidContent.class, () -> save(Kind.RECIPES, start, 1, "{'title':'Everyday','settings':{}}"));
        assertTrue(problem.getMessage().contains("Follower"), problem.getMessage());
        assertEquals(1, notebook.newest(Kind.RECIPES, start).number());
    }

    /** As when a save of the follower is under way while its starting point is saved: it was read before, and is written after. */
    @Test
    void a_recipe_that_was_moved_away_meanwhile_does_not_follow_on() throws Exception {
        UUID piece = piece("One");
        String settings = "'settings':{'straight':{'parameters':{'level':%d}}}";
        UUID start = create(Kind.RECIPES, "{'title':'Everyday'," + settings.formatted(80) + "}");
        UUID other = create(Kind.RECIPES, "{'title':'Other'," + settings.formatted(50) + "}");
        String following = "{'title':'goes','piece':'" + piece + "','follows':{'id':'%s'},'settings':{}}";
        UUID goes = create(Kind.RECIPES, following.formatted(start));
        CountDownLatch isWritten = new CountDownLatch(1);
        CountDownLatch mayCommit = new CountDownLatch(1);
        ExecutorService hands = Executors.newFixedThreadPool(2);
        Future<?> moving = hands.submit(() -> store.change(pages -> {
            Revision newest = pages.newestForSaving(goes).orElseThrow();
            ObjectNode json = newest.json().deepCopy();
            json.set("follows", json("{'id':'" + other + "','revision':1}"));
            Revision moved = second(newest, json);
            pages.append(moved, moved.content());
            isWritten.countDown();
            await(mayCommit);
            return true;
        }));
        await(isWritten);
        Future<?> saving =
                hands.submit(() -> save(Kind.RECIPES, start, 1, "{'title':'Everyday'," + settings.formatted(70) + "}"));
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(300)); // it waits for the follower's row by then
        mayCommit.countDown();
        moving.get();
        saving.get();
        hands.shutdown();
        assertEquals(2, notebook.newest(Kind.RECIPES, goes).number());
        assertEquals(50, level(goes));
    }

    private Revision second(Revision first, ObjectNode json) {
        String sha256 = ContentJson.sha256(ContentJson.canonical(json));
        return new Revision(first.sheetId(), first.kind(), 2, Optional.of(1), json, sha256, clock.instant(), "", "");
    }

    private static void await(CountDownLatch latch) {
        try {
            assertTrue(latch.await(20, TimeUnit.SECONDS));
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    @Test
    void a_played_set_holds_everything_at_the_revisions_that_were_used() {
        UUID piece = piece("One");
        UUID rig = rig();
        UUID recipe = create(Kind.RECIPES, "{'title':'One','piece':'" + piece + "','settings':{}}");
        UUID set = create(
                Kind.SETLISTS,
                "{'title':'Set','date':'2026-11-12','rig':{'id':'" + rig + "'},'items':{'a':{'order':1,'piece':'"
                        + piece + "','recipe':{'id':'" + recipe + "'}}}}");
        Setlist played = (Setlist) notebook.markPlayed(set, 1, NOTE).revision().content();
        assertTrue(played.played());
        assertEquals(1, played.items().get("a").recipe().revision());
        assertEquals(1, played.items().get("a").rig().revision());
        assertEquals(
                Optional.of(played.date()),
                Optional.ofNullable(
                        notebook.look(pages -> pages.lastPlayed(List.of(piece))).get(piece)));
        assertEquals(
                1,
                notebook.look(pages -> pages.useCounts(Content.Relation.PIECE, Kind.RECIPES, List.of(piece)))
                        .get(piece));
    }

    @Test
    void saves_from_many_hands_at_once_lose_nothing() throws Exception {
        UUID id = create(Kind.PIECES, "{'title':'One'}");
        int hands = 8;
        ExecutorService executor = Executors.newFixedThreadPool(hands);
        List<Future<Integer>> answers = new ArrayList<>();
        for (int hand = 0; hand < hands; hand++) {
            String key = "note " + hand;
            Callable<Integer> work = () -> appendNote(id, key);
            answers.add(executor.submit(work));
        }
        Set<Integer> numbers = new TreeSet<>();
        for (Future<Integer> answer : answers) {
            numbers.add(answer.get());
        }
        executor.shutdown();
        assertEquals(hands, numbers.size(), "everybody got a revision of their own");
        String notes = notebook.newest(Kind.PIECES, id).json().path("notes").asText();
        for (int hand = 0; hand < hands; hand++) {
            assertTrue(notes.contains("note " + hand), notes);
        }
    }

    private int appendNote(UUID id, String text) {
        while (true) {
            Revision newest = notebook.newest(Kind.PIECES, id);
            ObjectNode content = newest.json().deepCopy();
            content.put("notes", content.path("notes").asText() + text + "\n");
            try {
                return notebook.save(Kind.PIECES, id, newest.number(), content, NOTE, Optional.empty(), Set.of())
                        .revision()
                        .number();
            } catch (EditedMeanwhile again) {
                assertFalse(again.merge().isClean());
            }
        }
    }

    private byte[] exported() throws IOException {
        ByteArrayOutputStream zip = new ByteArrayOutputStream();
        new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK).export(zip);
        return zip.toByteArray();
    }

    @Test
    void exporting_and_importing_elsewhere_gives_the_same_notebook_and_twice_changes_nothing() throws IOException {
        a_played_set_holds_everything_at_the_revisions_that_were_used();
        byte[] zip = exported();
        try (Database elsewhere = Database.inMemory("t" + UUID.randomUUID())) {
            Notebook other = new Notebook(
                    DatabaseSheetStore.onlyNotebook(elsewhere, clock.instant()),
                    Clock.offset(clock, Duration.ofDays(1)));
            Archive archive = new Archive(elsewhere, DatabaseSheetStore.ONLY_NOTEBOOK);
            int revisions = archive.read(new ByteArrayInputStream(zip)).added();
            assertEquals(new Archive.Imported(0, revisions), archive.read(new ByteArrayInputStream(zip)));
            ByteArrayOutputStream again = new ByteArrayOutputStream();
            archive.export(again);
            assertEquals(Zips.contents(zip), Zips.contents(again.toByteArray()));
            assertEquals(new Archive.Verified(revisions, List.of()), archive.verify());
            assertEquals(notebook.look(Pages::counts), other.look(Pages::counts));
        }
    }

    @Test
    void what_is_kept_beside_a_sheet_and_does_not_agree_with_it_is_named() {
        UUID piece = piece("One");
        UUID instrument = create(
                Kind.INSTRUMENTS,
                "{'title':'Violin','strings':{'1':{'note':'E5'},'2':{'note':'A4'},'3':{'note':'D4'},'4':{'note':'G3'}}}");
        UUID synth = create(Kind.SYNTHS, "{'title':'Synth','inputs':6,'sensitivityScale':{'min':0,'max':40,'step':1}}");
        UUID rig = create(
                Kind.RIGS,
                "{'title':'Rig','instrument':{'id':'" + instrument + "'},'synth':{'id':'" + synth
                        + "'},'assignments':{'1':{'input':1,'sensitivity':20}}}");
        Archive archive = new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
        assertEquals(List.of(), archive.verify().damages());
        for (String damage : List.of(
                "DELETE FROM sheet_style",
                "UPDATE sheet_link SET relation = 'ABOUT' WHERE relation = 'SYNTH'",
                "UPDATE rig_string SET sensitivity = 21",
                "UPDATE sheet SET title = 'Two' WHERE title = 'One'")) {
            database.change(sql -> sql.execute(damage));
        }
        assertEquals(
                Set.of(
                        "pieces " + piece + ": its title, day or state do not agree with revision 1",
                        "pieces " + piece + ": its styles do not agree with revision 1",
                        "rigs " + rig + ": its links do not agree with revision 1",
                        "rigs " + rig + ": its strings do not agree with revision 1"),
                Set.copyOf(archive.verify().damages()));
    }

    @Test
    void a_damaged_revision_is_found_and_named() {
        UUID id = piece("One");
        Archive archive = new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
        assertEquals(List.of(), archive.verify().damages());
        database.change(sql ->
                sql.execute("UPDATE revision SET content = REPLACE(content, 'One', 'Two') WHERE sheet_id = ?", id));
        assertEquals(
                List.of("pieces " + id + ": revision 1 does not match its checksum"),
                archive.verify().damages());
    }

    private static byte[] midi(int length) {
        byte[] bytes = new byte[length];
        for (int at = 0; at < length; at++) {
            bytes[at] = (byte) (at * 31 + at / 251);
        }
        return bytes;
    }

    private static String take(Blob blob, String more) {
        return "{'title':'Wednesday','midi':{'sha256':'" + blob.sha256() + "','size':" + blob.size() + "}" + more + "}";
    }

    @Test
    void a_file_is_read_back_as_it_came_whatever_its_length() {
        for (int length :
                new int[] {1, BlobTable.PART_BYTES - 1, BlobTable.PART_BYTES, BlobTable.PART_BYTES + 1, 3_000_000}) {
            byte[] bytes = midi(length);
            Blob blob = notebook.keep(bytes);
            assertEquals(blob, notebook.keep(bytes), "kept twice is kept once");
            assertArrayEquals(bytes, notebook.look(pages -> pages.read(blob)).orElseThrow());
        }
        assertTrue(
                notebook.look(pages -> pages.read(new Blob("0".repeat(64), 1))).isEmpty());
    }

    @Test
    void a_take_names_only_a_file_that_is_kept() {
        Blob blob = Blob.of(midi(100));
        InvalidContent refused = assertThrows(InvalidContent.class, () -> create(Kind.TAKES, take(blob, "")));
        assertEquals("/midi", refused.pointer());
        notebook.keep(midi(100));
        UUID id = create(Kind.TAKES, take(blob, ""));
        assertEquals(Set.of(blob), notebook.newest(Kind.TAKES, id).content().blobs());
        InvalidContent otherSize =
                assertThrows(InvalidContent.class, () -> create(Kind.TAKES, take(new Blob(blob.sha256(), 99), "")));
        assertEquals("/midi", otherSize.pointer());
    }

    @Test
    void a_take_keeps_the_rig_revision_it_was_played_on() {
        UUID instrument = create(
                Kind.INSTRUMENTS,
                "{'title':'Violin','strings':{'1':{'note':'E5'},'2':{'note':'A4'},'3':{'note':'D4'},'4':{'note':'G3'}}}");
        UUID synth = create(Kind.SYNTHS, "{'title':'Synth','inputs':6,'sensitivityScale':{'min':0,'max':40,'step':1}}");
        String rig = "{'title':'%s','instrument':{'id':'" + instrument + "'},'synth':{'id':'" + synth + "'}}";
        UUID rigId = create(Kind.RIGS, rig.formatted("One"));
        Blob blob = notebook.keep(midi(100));
        UUID take = create(Kind.TAKES, take(blob, ",'rig':{'id':'" + rigId + "'}"));
        save(Kind.RIGS, rigId, 1, rig.formatted("Two"));
        TakeSheet kept = (TakeSheet) notebook.newest(Kind.TAKES, take).content();
        assertEquals(1, kept.rig().revision());
        assertEquals(
                List.of(take),
                notebook.look(pages -> pages.usedBy(rigId)).stream()
                        .filter(use -> use.kind() == Kind.TAKES)
                        .map(Pages.Use::id)
                        .toList());
    }

    @Test
    void takes_are_listed_by_day_and_those_without_one_by_when_they_were_saved() {
        Blob blob = notebook.keep(midi(100));
        UUID earlier = create(Kind.TAKES, take(blob, ",'date':'2026-11-11'"));
        UUID later = create(Kind.TAKES, take(blob, ",'date':'2026-11-13'"));
        UUID undated = create(Kind.TAKES, take(blob, ""));
        List<UUID> listed = notebook
                .look(pages -> pages.list(
                        new Pages.Query(Optional.of(Kind.TAKES), "", Optional.empty(), Optional.empty(), 10)))
                .items()
                .stream()
                .map(Revision::sheetId)
                .toList();
        assertEquals(List.of(later, undated, earlier), listed);
    }

    @Test
    void an_archive_carries_files_and_their_takes_into_an_empty_notebook() throws IOException {
        Blob blob = notebook.keep(midi(700_000));
        UUID take = create(Kind.TAKES, take(blob, ""));
        Archive archive = new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
        ByteArrayOutputStream zip = new ByteArrayOutputStream();
        archive.export(zip);
        assertEquals(List.of(), archive.verify().damages());
        try (Database other = fresh()) {
            DatabaseSheetStore there = DatabaseSheetStore.onlyNotebook(other, clock.instant());
            Archive empty = new Archive(other, DatabaseSheetStore.ONLY_NOTEBOOK);
            assertEquals(new Archive.Imported(1, 0), empty.read(new ByteArrayInputStream(zip.toByteArray())));
            assertEquals(new Archive.Imported(0, 1), empty.read(new ByteArrayInputStream(zip.toByteArray())));
            assertArrayEquals(
                    midi(700_000), there.look(pages -> pages.read(blob)).orElseThrow());
            assertTrue(there.look(pages -> pages.newest(take)).isPresent());
            assertEquals(List.of(), empty.verify().damages());
        }
    }

    @Test
    void a_file_that_was_damaged_or_lost_is_told() {
        Blob blob = notebook.keep(midi(700_000));
        create(Kind.TAKES, take(blob, ""));
        Archive archive = new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
        database.change(sql -> sql.update(BLOB_PART)
                .set(BLOB_PART.BYTES, new byte[] {1, 2, 3})
                .where(BLOB_PART.PART_NUMBER.eq(1))
                .execute());
        assertEquals(
                List.of("file " + blob.sha256() + " does not match its checksum"),
                archive.verify().damages());
        database.change(sql ->
                sql.deleteFrom(BLOB_PART).execute() + sql.deleteFrom(BLOB).execute());
        assertEquals(1, archive.verify().damages().size());
        assertTrue(archive.verify().damages().get(0).endsWith("names a file that is not there"));
    }

    private static final UUID ANOTHER = UUID.fromString("00000000-0000-0000-0000-0000000000a2");

    /** Another notebook in the same database. */
    private Notebook another() {
        new DatabaseNotebookStore(database).add(ANOTHER, "Another", Optional.empty(), clock.instant());
        return new Notebook(DatabaseSheetStore.of(database, ANOTHER), clock);
    }

    private static Pages.Query everything(Kind kind) {
        return new Pages.Query(Optional.of(kind), "", Optional.empty(), Optional.empty(), 100);
    }

    @Test
    void another_notebooks_sheets_are_not_seen() {
        UUID piece = piece("Here");
        UUID recipe = create(Kind.RECIPES, "{'title':'For here','piece':'" + piece + "','settings':{}}");
        create(
                Kind.SETLISTS,
                "{'title':'Played','date':'2026-11-01','state':'played','items':{'a':{'piece':'" + piece
                        + "','order':1}}}");
        Blob blob = notebook.keep(midi(1_000));
        Notebook another = another();
        another.look(pages -> {
            assertEquals(Optional.empty(), pages.newest(piece));
            assertEquals(Optional.empty(), pages.revision(piece, 1));
            assertEquals(List.of(), pages.history(piece, 10, Optional.empty()).items());
            assertEquals(List.of(), pages.usedBy(piece));
            assertEquals(Map.of(), pages.styles());
            assertEquals(Map.of(), pages.counts());
            assertEquals(Map.of(), pages.lastPlayed(List.of(piece)));
            assertEquals(Map.of(), pages.useCounts(Content.Relation.PIECE, Kind.RECIPES, List.of(piece)));
            assertEquals(
                    List.of(),
                    pages.setlists(Set.of(true, false), LocalDate.MIN.withYear(1), LocalDate.of(9999, 1, 1), 9));
            assertFalse(pages.holds(blob));
            assertEquals(Optional.empty(), pages.read(blob));
            for (Kind kind : Kind.values()) {
                assertEquals(List.of(), pages.list(everything(kind)).items(), kind.path());
            }
            return null;
        });
        var noLink = assertThrows(
                InvalidContent.class,
                () -> another.create(
                        Kind.RECIPES,
                        UUID.randomUUID(),
                        json("{'title':'Elsewhere','piece':'" + piece + "','settings':{}}"),
                        NOTE,
                        Optional.empty()));
        assertEquals("/piece", noLink.pointer());
        assertEquals(
                List.of(recipe),
                notebook.look(pages -> pages.usedBy(piece)).stream()
                        .filter(use -> use.kind() == Kind.RECIPES)
                        .map(Pages.Use::id)
                        .toList());
    }

    @Test
    void the_same_ids_in_two_notebooks_are_two_sheets_in_everything_that_is_asked() {
        UUID violin = UUID.randomUUID();
        UUID synth = UUID.randomUUID();
        UUID rig = UUID.randomUUID();
        UUID piece = UUID.randomUUID();
        UUID set = UUID.randomUUID();
        int sensitivity = 20;
        for (Notebook each : List.of(notebook, another())) {
            each.create(
                    Kind.INSTRUMENTS,
                    violin,
                    json(
                            "{'title':'Violin','strings':{'1':{'note':'E5'},'2':{'note':'A4'},'3':{'note':'D4'},'4':{'note':'G3'}}}"),
                    NOTE,
                    Optional.empty());
            each.create(
                    Kind.SYNTHS,
                    synth,
                    json("{'title':'Synth','sensitivityScale':{'min':0,'max':100,'step':1}}"),
                    NOTE,
                    Optional.empty());
            each.create(
                    Kind.RIGS,
                    rig,
                    json("{'title':'Rig','date':'2026-11-10','instrument':{'id':'" + violin + "'},'synth':{'id':'"
                            + synth + "'},'assignments':{'1':{'input':1,'sensitivity':" + sensitivity + "}}}"),
                    NOTE,
                    Optional.empty());
            each.create(
                    Kind.PIECES,
                    piece,
                    json("{'title':'Piece " + sensitivity + "','styles':['reel','style " + sensitivity + "']}"),
                    NOTE,
                    Optional.empty());
            each.create(
                    Kind.SETLISTS,
                    set,
                    json("{'title':'Set','date':'2026-11-0" + sensitivity / 20
                            + "','state':'played','items':{'a':{'piece':'" + piece + "','order':1}}}"),
                    NOTE,
                    Optional.empty());
            sensitivity += 20;
        }
        sensitivity = 20;
        for (UUID id : List.of(DatabaseSheetStore.ONLY_NOTEBOOK, ANOTHER)) {
            Notebook each = new Notebook(DatabaseSheetStore.of(database, id), clock);
            double expected = sensitivity;
            each.look(pages -> {
                assertEquals(
                        "Piece " + (int) expected,
                        pages.newest(piece).orElseThrow().content().title());
                assertEquals(
                        1, pages.history(piece, 10, Optional.empty()).items().size());
                assertEquals(1, pages.usedBy(piece).size());
                assertEquals(1, pages.list(everything(Kind.PIECES)).items().size());
                assertEquals(
                        Set.of("reel", "style " + (int) expected),
                        pages.styles().keySet());
                assertEquals(1, pages.styles().get("reel"));
                assertEquals(1, pages.stringHistory(rig).get(1).size());
                assertEquals(
                        Optional.of(expected),
                        pages.stringHistory(rig).get(1).get(0).sensitivity());
                assertEquals(
                        Map.of(piece, LocalDate.of(2026, 11, (int) expected / 20)), pages.lastPlayed(List.of(piece)));
                assertEquals(Map.of(piece, 1), pages.useCounts(Content.Relation.PIECE, Kind.SETLISTS, List.of(piece)));
                return null;
            });
            assertEquals(List.of(), new Archive(database, id).verify().damages());
            sensitivity += 20;
        }
    }

    @Test
    void titles_are_listed_by_their_letters_page_by_page_whatever_the_database_makes_of_them() {
        List<String> inOrder =
                List.of("apple", "Äpfel im Wind", "Black Elk", "b-flat", "Élan", "eve", "Zebra", "弓", "🎻");
        List<String> sorted = new ArrayList<>(inOrder);
        sorted.sort(java.util.Comparator.comparing(TitleOrder::key));
        inOrder.forEach(this::piece);
        List<String> listed = new ArrayList<>();
        Optional<String> after = Optional.empty();
        do {
            Pages.Query query = new Pages.Query(Optional.of(Kind.PIECES), "", Optional.empty(), after, 2);
            Pages.Page<Revision> page = notebook.look(pages -> pages.list(query));
            page.items().forEach(piece -> listed.add(piece.content().title()));
            after = page.next();
        } while (after.isPresent());
        assertEquals(sorted, listed);
    }

    @Test
    void words_are_found_in_any_case_of_any_alphabet() {
        UUID id = piece("ÉLAN und ΩΔΗ");
        for (String word : List.of("élan", "ÉLAN", "ωδη", "Und")) {
            Pages.Query query = new Pages.Query(Optional.empty(), word, Optional.empty(), Optional.empty(), 10);
            assertEquals(
                    List.of(id),
                    notebook.look(pages -> pages.list(query)).items().stream()
                            .map(Revision::sheetId)
                            .toList(),
                    word);
        }
    }

    @Test
    void what_was_made_of_sheets_is_made_again_once_a_newest_revision_of_them_has_changed() {
        UUID id = piece("One");
        UUID other = piece("Other");
        java.util.concurrent.atomic.AtomicInteger made = new java.util.concurrent.atomic.AtomicInteger();
        java.util.function.Supplier<String> told = () -> new String(
                notebook.look(pages -> pages.recall("titles")
                        .orElseGet(() -> pages.remember("titles", read -> {
                            made.incrementAndGet();
                            return read.newest(id)
                                    .orElseThrow()
                                    .content()
                                    .title()
                                    .getBytes(StandardCharsets.UTF_8);
                        }))),
                StandardCharsets.UTF_8);
        assertEquals("One", told.get());
        assertEquals("One", told.get());
        save(Kind.PIECES, other, 1, "{'title':'Another'}");
        assertEquals("One", told.get());
        assertEquals(1, made.get());
        save(Kind.PIECES, id, 1, "{'title':'Two'}");
        assertEquals("Two", told.get());
        assertEquals(2, made.get());
    }

    @Test
    void a_history_is_read_from_any_place_downwards() {
        UUID id = piece("One");
        for (int number = 1; number < 6; number++) {
            save(Kind.PIECES, id, number, "{'title':'One " + number + "'}");
        }
        assertEquals("6 5, then 5", history(id, 2, Optional.empty()));
        assertEquals("4 3, then 3", history(id, 2, Optional.of(5)));
        assertEquals("2 1", history(id, 2, Optional.of(3)));
        assertEquals("6 5 4 3 2 1", history(id, 6, Optional.empty()));
        assertEquals("", history(UUID.randomUUID(), 6, Optional.empty()));
    }

    private String history(UUID id, int limit, Optional<Integer> below) {
        Pages.Page<Revision> page = notebook.look(pages -> pages.history(id, limit, below));
        return page.items().stream()
                        .map(revision -> Integer.toString(revision.number()))
                        .collect(java.util.stream.Collectors.joining(" "))
                + page.next().map(next -> ", then " + next).orElse("");
    }

    @Test
    void what_is_made_of_a_list_cannot_be_remembered() {
        Pages.Query query = new Pages.Query(Optional.empty(), "", Optional.empty(), Optional.empty(), 10);
        assertThrows(
                IllegalStateException.class,
                () -> notebook.look(pages -> pages.remember("list", read -> {
                    read.list(query);
                    return new byte[0];
                })));
    }

    @Test
    void a_revision_that_was_undone_is_not_remembered() {
        UUID id = piece("One");
        assertThrows(
                ArithmeticException.class,
                () -> store.change(pages -> {
                    Revision newest = pages.newest(id).orElseThrow();
                    ObjectNode json = newest.json().deepCopy().put("title", "Never");
                    Revision never = second(newest, json);
                    pages.append(never, never.content());
                    assertEquals(
                            "Never",
                            pages.revision(id, 2).orElseThrow().content().title());
                    throw new ArithmeticException("undone");
                }));
        assertEquals(Optional.empty(), notebook.look(pages -> pages.revision(id, 2)));
        save(Kind.PIECES, id, 1, "{'title':'Two'}");
        assertEquals("Two", notebook.revision(Kind.PIECES, id, 2).content().title());
    }
}
