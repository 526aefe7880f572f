package rosinbook.testing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import rosinbook.store.Database;

class TestDatabaseTest {
    @Test
    void tests_that_run_on_both_databases_open_none_by_themselves() {
        JavaClasses tests = new ClassFileImporter()
                .importPackages("rosinbook.web", "rosinbook.example")
                .that(DescribedPredicate.describe("are tests that run on both", TestDatabaseTest::runsOnBoth));
        ArchRuleDefinition.noClasses()
                .that()
                .haveSimpleNameNotEndingWith("IT")
                .and()
                .doNotHaveSimpleName("DiscretionTest") // PostgresDiscretionIT is its like on the other database
                .and()
                .doNotHaveSimpleName("BackupsApiTest") // the one in a folder is what a backup is restored into
                .should()
                .callMethod(Database.class, "inMemory", String.class)
                .orShould()
                .callMethod(Database.class, "inFolder", Path.class)
                .because("TestDatabase.fresh() follows the run, so that no test stays on the embedded database unseen")
                .check(tests);
    }

    /** Not what has a partner of its own on PostgreSQL, and not what runs the packaged program. */
    private static boolean runsOnBoth(JavaClass type) {
        boolean isTest = type.getSource().orElseThrow().getUri().toString().contains("test-classes");
        return isTest && !type.getName().matches(".*(IT|\\.DiscretionTest)(\\$.*)?");
    }

    @Test
    void a_run_is_about_the_embedded_database_unless_it_says_otherwise() throws Exception {
        try (TestDatabase fresh = TestDatabase.fresh();
                var connection = fresh.connect()) {
            assertEquals("H2", connection.getMetaData().getDatabaseProductName());
        }
    }
}
