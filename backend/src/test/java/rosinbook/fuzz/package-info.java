/** Odd input by the seed, and what is kept of it: see {@code src/test/resources/fuzz/README.md}. */
package rosinbook.fuzz;
