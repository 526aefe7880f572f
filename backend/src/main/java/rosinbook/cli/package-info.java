/**
 * The commands of {@code rosinbook.jar}.
 *
 * <p><b>Conventions.</b> Plain text for a person, or JSON with {@code --json}. Exit status 0: done; 1: the answer is a
 * warning; 2: the call or its input is wrong, said in a sentence on the error stream.
 */
package rosinbook.cli;
