/**
 * Keeping sheets on disk: H2 in a file, or PostgreSQL.
 *
 * <p><b>What.</b> The database and its migrations, the sheets in it, the archive that carries a notebook from one place
 * to another, and the check that nothing was damaged.
 *
 * <p><b>Conventions.</b> SQL goes through jOOQ's classes, generated from {@code migrations/}; names are rendered unquoted
 * because H2 and PostgreSQL fold them differently. On H2, a change is answered only after the file was forced to the
 * disk.
 *
 * <p><b>Left out.</b> Rules: what may be saved is decided in {@code rosinbook.notebook}.
 */
package rosinbook.store;
