package rosinbook.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.h2.jdbcx.JdbcDataSource;
import org.jooq.DSLContext;
import org.jooq.SQLDialect;
import org.jooq.impl.DSL;
import org.junit.jupiter.api.Test;

class StoredTablesTest {
    /** A backup of before is restored into the tables of its own version, and all of them are ours. */
    @Test
    void every_table_of_every_version_is_known() throws Exception {
        JdbcDataSource source = new JdbcDataSource();
        source.setUrl("jdbc:h2:mem:every-version");
        Migrations migrations = new Migrations(source);
        try (var connection = source.getConnection()) {
            DSLContext sql = DSL.using(connection, SQLDialect.H2);
            for (String version : List.of("1", "2", "3", "4", "5", "6")) {
                migrations.to(version);
                Set<String> there = new TreeSet<>(sql.fetch(
                                "SELECT LOWER(table_name) FROM information_schema.tables WHERE table_schema = 'PUBLIC'")
                        .getValues(0, String.class));
                there.remove(Migrations.HISTORY_TABLE);
                Set<String> known = StoredTables.inOrder(sql).stream()
                        .map(StoredTables::name)
                        .collect(Collectors.toCollection(TreeSet::new));
                assertEquals(there, known, "version " + version);
            }
        }
    }
}
