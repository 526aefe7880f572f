/**
 * The example season: an invented player's notebook over fourteen weeks.
 *
 * <p><b>What.</b> Two instruments, a synth, their rigs, pieces, recipes, sets and a log, replayed save by save through
 * {@link rosinbook.notebook.Notebook}, so that every sheet has the history it would have had.
 *
 * <p><b>Conventions.</b> The season is data: one file a chapter in the resources' folder {@code example}, each an array
 * of {@link rosinbook.example.Step}s. Days count from the day it is written for (0 is tonight, -7 is last week's set).
 * In contents, {@code "sheet:violin-rig"} stands for that sheet's id and {@code "day:-7"} for that date. Ids are the same
 * in every notebook. Times of day are UTC; the last save lies far enough back to be in the past everywhere.
 *
 * <p><b>Left out.</b> Recordings of sound. The takes are made up note by note, faults included.
 */
package rosinbook.example;
