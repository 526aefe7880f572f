package rosinbook.web;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.platform.suite.api.AfterSuite;
import org.junit.platform.suite.api.BeforeSuite;
import org.junit.platform.suite.api.ExcludeClassNamePatterns;
import org.junit.platform.suite.api.IncludeClassNamePatterns;
import org.junit.platform.suite.api.SelectClasses;
import org.junit.platform.suite.api.SelectPackages;
import org.junit.platform.suite.api.Suite;
import rosinbook.testing.PostgresServer;
import rosinbook.testing.TestDatabase;

/** Every test of the API, of archives and of the example once more, now on PostgreSQL. */
@Suite
@SelectPackages({"rosinbook.web", "rosinbook.example"})
@SelectClasses(names = "rosinbook.store.ArchiveTest")
@IncludeClassNamePatterns("rosinbook\\..*Test")
// The first has a partner of its own, PostgresDiscretionIT. Requests of the next three never get as far as a database.
// The
// last one's get there through OddRequestsTest.
@ExcludeClassNamePatterns({
    ".*\\.DiscretionTest",
    ".*\\.DoorsTest",
    ".*\\.SendersTest",
    ".*\\.StrangersTest",
    ".*\\.OddInputsTest"
})
class OnPostgresIT {
    /** Fewer would mean that most tests went past the harness; there are more than two hundred. */
    private static final int FEWEST_DATABASES = 150;

    @BeforeSuite
    static void choosePostgresql() {
        PostgresServer.migratedDatabase();
        TestDatabase.use(TestDatabase.Product.POSTGRESQL);
    }

    @AfterSuite
    static void chooseH2AndCount() {
        TestDatabase.use(TestDatabase.Product.H2);
        int opened = TestDatabase.openedOnPostgresql();
        assertTrue(opened >= FEWEST_DATABASES, "only " + opened + " databases were opened on PostgreSQL");
    }
}
