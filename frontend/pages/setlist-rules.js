/** setlist-rules.js: the pieces of a set in order, and the set one compares it with. No DOM. */
import { inOrder, nextOrder } from '../order-rules.js';
import { newKey } from '../words-rules.js';

/** Keys of the items in playing order. @param {any} set content @returns {string[]} */
export function playingOrder(set) {
  return inOrder(set.items ?? {});
}

/**
 * The set one asks about with "what changed since last time": the last one before it, a played one if there is any.
 *
 * @param {import('../api.js').Envelope[]} sets
 * @param {{ id: string, content: any }} set
 */
export function lastTime(sets, set) {
  const before = sets.filter(({ id, content }) => id !== set.id && content.date < set.content.date)
    .sort((one, other) => other.content.date.localeCompare(one.content.date));
  return before.find(({ content }) => content.state === 'played') ?? before[0];
}

/**
 * How a set refers to a recipe or a rig: one that was played holds the exact revision, a planned one follows the newest.
 *
 * @param {any} set content
 * @param {{ id: string, revision?: number } | undefined} sheet its envelope
 * @returns {{ id: string, revision?: number } | undefined}
 */
export function referenceTo(set, sheet) {
  if (!sheet) return undefined;
  return set.state === 'played' && sheet.revision ? { id: sheet.id, revision: sheet.revision } : { id: sheet.id };
}

/**
 * A piece put at the end, with the recipe it was given last: the one most recently played, else the first.
 *
 * @param {any} set content, changed in place
 * @param {string} piece
 * @param {{ id: string, revision?: number, extras?: { lastPlayed?: string } }[]} recipes for that piece
 * @param {() => string} [key]
 */
export function addPiece(set, piece, recipes, key = newKey) {
  set.items ??= {};
  const usual = [...recipes].sort((one, other) => (other.extras?.lastPlayed ?? '').localeCompare(one.extras?.lastPlayed ?? ''))[0];
  set.items[key()] = { order: nextOrder(set.items), piece, ...(usual ? { recipe: referenceTo(set, usual) } : {}), note: '' };
}

/**
 * The rig an item is played on: its own, else the set's.
 *
 * @param {any} set content
 * @param {any} item
 */
export function rigOf(set, item) {
  return item.rig ?? set.rig;
}

/** Whether another rig is taken up for this item than for the one before. @param {any} set @param {any} item @param {any} [previous] */
export function changesRig(set, item, previous) {
  const now = rigOf(set, item)?.id;
  const before = previous ? rigOf(set, previous)?.id : set.rig?.id;
  return now !== undefined && now !== before;
}
