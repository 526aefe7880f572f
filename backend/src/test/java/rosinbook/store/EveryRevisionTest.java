package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class EveryRevisionTest {
    @Test
    void an_export_and_a_verification_ask_for_a_few_revisions_at_a_time() throws IOException {
        try (Database database = Database.inMemory("revisions-" + UUID.randomUUID())) {
            LongHistory.write(database, 500, 5);
            long all = database.look(sql -> sql.fetchCount(rosinbook.store.schema.Tables.REVISION));
            Damage.execute(database, "SET QUERY_STATISTICS TRUE");
            Archive archive = new Archive(database, DatabaseSheetStore.ONLY_NOTEBOOK);
            ByteArrayOutputStream zip = new ByteArrayOutputStream();
            archive.export(zip);
            assertEquals(
                    all,
                    Zips.contents(zip.toByteArray()).keySet().stream()
                            .filter(ArchiveEntry::isName)
                            .count());
            assertEquals(all, archive.verify().revisions());
            int most = database.look(
                    sql -> sql.fetchOne("SELECT MAX(max_row_count) FROM information_schema.query_statistics"
                                    + " WHERE LOWER(sql_statement) LIKE '%revision.content,%'")
                            .get(0, int.class));
            assertTrue(most > 1 && most <= EveryRevision.AT_ONCE, most + " at once, of " + all);
        }
    }
}
