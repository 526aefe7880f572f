package rosinbook.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.DSLContext;
import org.jooq.ForeignKey;
import org.jooq.Table;
import org.jooq.impl.DSL;
import rosinbook.store.schema.DefaultSchema;

/** The tables that a database holds at this moment, whichever version they are of. */
final class StoredTables {
    /** Tables of earlier versions that are there no longer. */
    private static final Set<String> OF_BEFORE = Set.of("notebook_owner");

    private static final Set<String> OURS = Stream.concat(
                    DefaultSchema.DEFAULT_SCHEMA.getTables().stream().map(StoredTables::name), OF_BEFORE.stream())
            .collect(Collectors.toUnmodifiableSet());

    private StoredTables() {}

    /**
     * All of ours, whatever else extensions or people keep in the same schema; each comes after those that it refers to.
     *
     * @throws IllegalStateException if two refer to each other, or one has no primary key
     */
    static List<Table<?>> inOrder(DSLContext sql) {
        String schema = sql.select(DSL.currentSchema()).fetchSingle().value1();
        List<Table<?>> waiting = sql.meta().filterSchemas(each -> each.getName().equals(schema)).getTables().stream()
                .filter(table -> OURS.contains(name(table)))
                .sorted((one, other) -> name(one).compareTo(name(other)))
                .collect(Collectors.toCollection(ArrayList::new));
        List<Table<?>> ordered = new ArrayList<>();
        while (!waiting.isEmpty()) {
            Table<?> next = waiting.stream()
                    .filter(table -> table.getReferences().stream()
                            .map(StoredTables::target)
                            .noneMatch(target ->
                                    waiting.stream().anyMatch(each -> name(each).equals(target))))
                    .findFirst()
                    .orElseThrow(() -> new IllegalStateException("tables refer to each other: " + waiting));
            if (next.getPrimaryKey() == null) {
                throw new IllegalStateException(name(next) + " has no primary key");
            }
            ordered.add(next);
            waiting.remove(next);
        }
        return ordered;
    }

    private static String target(ForeignKey<?, ?> reference) {
        return name(reference.getKey().getTable());
    }

    /** A table's name as {@code migrations/} writes it. */
    static String name(Table<?> table) {
        return table.getName().toLowerCase(Locale.ROOT);
    }
}
