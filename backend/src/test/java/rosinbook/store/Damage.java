package rosinbook.store;

/** Spoils a database, so that what should work fails. */
public final class Damage {
    private Damage() {}

    public static void execute(Database database, String sql) {
        database.change(dsl -> dsl.execute(sql));
    }
}
