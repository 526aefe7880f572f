/** order-rules.js: moving things by their `order` numbers, so that two people's moves touch as little as possible. No DOM. */

/** Keys in the order they are shown. @param {Record<string, { order: number }>} entries */
export function inOrder(entries) {
  return Object.keys(entries).sort((one, other) => entries[one].order - entries[other].order || one.localeCompare(other));
}

/** The order behind the last. @param {Record<string, { order: number }>} entries */
export function nextOrder(entries) {
  return Math.max(0, ...Object.values(entries).map((each) => each.order)) + 1;
}

/**
 * The numbers to write so that an entry comes to stand at a place: usually one, between its new neighbours.
 * Only when neighbours leave no room between them, all are numbered anew.
 *
 * @param {Record<string, { order: number }>} entries left as they are
 * @param {string} key
 * @param {number} index the place among all, from 0; held to the ends
 * @returns {Record<string, number>} new orders by key; empty if nothing moves
 */
export function ordersAfterMove(entries, key, index) {
  const before = inOrder(entries);
  const others = before.filter((each) => each !== key);
  const place = Math.max(0, Math.min(others.length, index));
  const after = [...others.slice(0, place), key, ...others.slice(place)];
  if (after.every((each, position) => each === before[position])) return {};
  const order = between(entries[others[place - 1]]?.order, entries[others[place]]?.order);
  if (order !== null) return { [key]: order };
  return Object.fromEntries(after.map((each, position) => [each, position + 1]).filter(([each, number]) => entries[each].order !== number));
}

/** A number between two, or null if there is no room; an absent end is open. @returns {number | null} */
function between(low, high) {
  if (low === undefined && high === undefined) return 1;
  if (low === undefined) return high - 1;
  if (high === undefined) return low + 1;
  const middle = (low + high) / 2;
  // A gap this small would run out of digits after a few more moves.
  return high - low > 1e-6 ? middle : null;
}
