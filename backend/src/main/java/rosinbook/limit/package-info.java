/**
 * How much is too much, at every door.
 *
 * <p><b>What.</b> {@link rosinbook.limit.Limit} is the one table of what is refused for its size, number, depth or time, with the
 * name under which it is refused; {@link rosinbook.limit.PastLimit} is thrown where something passes one. The same table stands,
 * for readers, in {@code docs/limits.md}.
 *
 * <p><b>Conventions.</b> A limit is the most that is still let in. Single fields may allow less than the limit of their kind (a
 * title has 200 characters, a text 20 000); then the message says how much, and the description of the API does.
 *
 * <p><b>What is left out.</b> Bounds on our own work that nobody notices, such as how many suspects a diagnosis names.
 */
package rosinbook.limit;
