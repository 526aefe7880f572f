/**
 * Sheets, their revisions, and the rules of keeping.
 *
 * <p><b>What.</b> The content a player writes (gear, rigs, pieces, recipes, setlists, log) as records that cannot hold an
 * invalid value; the {@link rosinbook.notebook.Notebook} that saves them, merges saves that crossed, resolves recipes
 * that follow a starting point, and marks sets as played.
 *
 * <p><b>Conventions.</b> Whatever has an identity (a string, a pin, a voice, an effect, an item of a set) is an entry of
 * a map and carries an {@code order} where order matters, never a position in an array: so two edits of two entries
 * do not touch each other. String 1 is the highest. Absent text is empty, absent numbers are absent. A
 * {@link rosinbook.notebook.Reference} without a revision means the newest. Content is stored as canonical JSON (RFC
 * 8785) and identified by its SHA-256.
 *
 * <p><b>Left out.</b> How it is stored and how it is served: this package knows no SQL and no HTTP.
 */
package rosinbook.notebook;
