package rosinbook.testing;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import rosinbook.store.Database;

/** A database of its own for a test that runs on both; which one it is, the run says and not the test. */
public final class TestDatabase implements AutoCloseable {
    /** Which database a run is about; named as its driver names it. */
    public enum Product {
        H2("H2"),
        POSTGRESQL("PostgreSQL");

        private final String name;

        Product(String name) {
            this.name = name;
        }
    }

    private static final AtomicInteger OPENED_ON_POSTGRESQL = new AtomicInteger();
    private static volatile Product product = Product.H2;

    private final PostgresServer.Address address;
    private final Database database;

    private TestDatabase(PostgresServer.Address address, Database database) {
        this.address = address;
        this.database = database;
    }

    /** From now on, tests run on this one. */
    public static void use(Product wanted) {
        product = wanted;
    }

    /** The one that tests run on now. */
    public static Product inUse() {
        return product;
    }

    /** How many databases were opened on PostgreSQL so far. */
    public static int openedOnPostgresql() {
        return OPENED_ON_POSTGRESQL.get();
    }

    /** A fresh one with all tables and nothing in them. */
    public static TestDatabase fresh() {
        TestDatabase fresh =
                switch (product) {
                    case H2 -> {
                        String name = "t" + UUID.randomUUID();
                        yield new TestDatabase(
                                new PostgresServer.Address("jdbc:h2:mem:" + name, "rosinbook", ""),
                                Database.inMemory(name));
                    }
                    case POSTGRESQL -> {
                        PostgresServer.Address address = PostgresServer.migratedDatabase();
                        OPENED_ON_POSTGRESQL.incrementAndGet();
                        yield new TestDatabase(address, address.open());
                    }
                };
        fresh.checkProduct();
        return fresh;
    }

    private void checkProduct() {
        try (Connection connection = connect()) {
            String found = connection.getMetaData().getDatabaseProductName();
            if (!found.equals(product.name)) {
                throw new AssertionError("this run is about " + product.name + ", not " + found);
            }
        } catch (SQLException problem) {
            throw new AssertionError("the test's database does not answer", problem);
        }
    }

    public Database database() {
        return database;
    }

    /** The same database once more, as another process opens it. */
    public TestDatabase again() {
        Database opened = product == Product.H2
                ? Database.inMemory(address.url().substring("jdbc:h2:mem:".length()))
                : address.open();
        return new TestDatabase(address, opened);
    }

    /** A way into the same database past the program. */
    public Connection connect() throws SQLException {
        return address.connect();
    }

    @Override
    public void close() {
        database.close();
    }
}
