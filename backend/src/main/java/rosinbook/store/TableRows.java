package rosinbook.store;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jooq.DSLContext;
import org.jooq.Field;
import org.jooq.InsertValuesStepN;
import org.jooq.Record;
import org.jooq.Result;
import org.jooq.SelectSeekStepN;
import org.jooq.Table;
import org.jooq.exception.DataTypeException;
import org.jooq.impl.SQLDataType;

/** A table's rows as lines of JSON, the same from whichever database: one object a row, bytes as Base64, times in UTC. */
final class TableRows {
    /** Rows that are held in memory at once. */
    private static final int AT_ONCE = 50;

    private static final ObjectMapper JSON = new ObjectMapper();

    private final DSLContext sql;
    private final Table<?> table;
    private final List<? extends Field<?>> key;

    TableRows(DSLContext sql, Table<?> table) {
        this.sql = sql;
        this.table = table;
        this.key = table.getPrimaryKey().getFields();
    }

    /** @return how many were written */
    long write(OutputStream target) throws IOException {
        long count = 0;
        Result<? extends Record> rows = after(null);
        while (!rows.isEmpty()) {
            for (Record row : rows) {
                target.write(line(row));
            }
            count += rows.size();
            rows = rows.size() < AT_ONCE ? sql.newResult() : after(rows.get(rows.size() - 1));
        }
        return count;
    }

    private Result<? extends Record> after(Record last) {
        SelectSeekStepN<? extends Record> ordered = sql.selectFrom(table).orderBy(key);
        return last == null
                ? ordered.limit(AT_ONCE).fetch()
                : ordered.seek(key.stream().map(last::get).toArray())
                        .limit(AT_ONCE)
                        .fetch();
    }

    private static byte[] line(Record row) throws IOException {
        ObjectNode json = JSON.createObjectNode();
        for (Field<?> field : row.fields()) {
            put(json, field.getName().toLowerCase(Locale.ROOT), row.get(field));
        }
        return (JSON.writeValueAsString(json) + "\n").getBytes(StandardCharsets.UTF_8);
    }

    private static void put(ObjectNode json, String name, Object value) {
        if (value == null) {
            json.putNull(name);
        } else if (value instanceof byte[] bytes) {
            json.put(name, bytes);
        } else if (value instanceof OffsetDateTime time) {
            json.put(name, time.toInstant().toString());
        } else if (value instanceof Boolean || value instanceof Number) {
            json.set(name, JSON.valueToTree(value));
        } else {
            json.put(name, SQLDataType.VARCHAR.convert(value));
        }
    }

    /**
     * Adds rows.
     *
     * @return how many were read
     * @throws BackupUnreadable if they are not rows of this table
     */
    long read(InputStream source) throws IOException {
        BufferedReader lines = new BufferedReader(new InputStreamReader(source, StandardCharsets.UTF_8));
        long count = 0;
        List<Object[]> rows = new ArrayList<>();
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            rows.add(values(line));
            if (rows.size() == AT_ONCE) {
                add(rows);
            }
            count++;
        }
        add(rows);
        return count;
    }

    private void add(List<Object[]> rows) {
        if (rows.isEmpty()) {
            return;
        }
        InsertValuesStepN<?> insert = sql.insertInto(table).columns(table.fields());
        for (Object[] row : rows) {
            insert = insert.values(row);
        }
        insert.execute();
        rows.clear();
    }

    private Object[] values(String line) throws IOException {
        JsonNode row = JSON.readTree(line);
        if (row.size() != table.fields().length) {
            throw strange(null);
        }
        return Arrays.stream(table.fields()).map(field -> value(row, field)).toArray();
    }

    private Object value(JsonNode row, Field<?> field) {
        JsonNode value = row.get(field.getName().toLowerCase(Locale.ROOT));
        try {
            if (value == null) {
                throw strange(null);
            }
            if (value.isNull()) {
                return null;
            }
            return field.getType() == byte[].class
                    ? value.binaryValue()
                    : field.getDataType().convert(value.asText());
        } catch (IOException | DataTypeException problem) {
            throw strange(problem);
        }
    }

    private BackupUnreadable strange(Exception cause) {
        BackupUnreadable problem = new BackupUnreadable("this backup does not fit its own version: rows of "
                + StoredTables.name(table) + " are of another shape");
        if (cause != null) {
            problem.initCause(cause);
        }
        return problem;
    }
}
