/**
 * keyed-list.js: draws a list again without throwing away what is already there, so that focus, a half-typed word
 * and a pressed finger survive.
 *
 *   keyedList(ul, pieces, (piece) => piece.id, (piece) => PieceRow(el('li'), piece), (row, piece) => row.show(piece));
 *
 * `create` returns either an element or a part ({ element, … }); `update` is called for those that stay.
 * The parent must hold nothing else. Where whoever types by keyboard was in an entry that is gone, they come to the one
 * that took its place, or to the list itself.
 */

const known = new WeakMap();
/** Where somebody may land: no field that would bring up the keyboard of a phone while there is something else. */
const LANDINGS = ['a[href], button, summary, select', 'input, textarea'];

/**
 * @template Item
 * @template Part
 * @param {Element} parent
 * @param {Item[]} items
 * @param {(item: Item, index: number) => string} keyOf  must differ for every item
 * @param {(item: Item, index: number) => Part} create
 * @param {(part: Part, item: Item, index: number) => void} [update]
 */
export function keyedList(parent, items, keyOf, create, update = () => {}) {
  const before = known.get(parent) ?? new Map();
  const after = new Map();
  items.forEach((item, index) => {
    const key = keyOf(item, index);
    if (after.has(key)) throw new RangeError(`two items have the key "${key}"`);
    const kept = before.get(key);
    if (kept) update(kept, item, index);
    after.set(key, kept ?? create(item, index));
  });
  const held = /** @type {HTMLElement} */ (document.activeElement);
  const lost = [...before].findIndex(([key, part]) => !after.has(key) && elementOf(part).contains(held));
  for (const [key, part] of before) if (!after.has(key)) elementOf(part).remove();
  let place = parent.firstElementChild;
  for (const part of after.values()) {
    const element = elementOf(part);
    // Only what is out of place is moved: moving an element would take its focus away.
    if (element === place) place = place.nextElementSibling;
    else parent.insertBefore(element, place);
  }
  known.set(parent, after);
  if (document.activeElement !== held && parent.contains(held)) held.focus();
  if (lost >= 0) land(parent, [...after.values()].map(elementOf), lost);
}

function land(parent, entries, place) {
  const heir = entries[Math.min(place, entries.length - 1)];
  const landing = heir && LANDINGS.flatMap((each) => [...heir.querySelectorAll(each)]).find((each) => !each.disabled && each.checkVisibility());
  if (!landing) parent.tabIndex = -1;
  (landing ?? parent).focus();
}

function elementOf(part) {
  return part instanceof Element ? part : part.element;
}
