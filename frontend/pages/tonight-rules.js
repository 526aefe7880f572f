/** tonight-rules.js: the next set as lines, each with what is new about it since the last time. No DOM. */
import { dayFrom } from '../words-rules.js';

/**
 * @typedef {Object} Line
 * @property {string} pieceId
 * @property {string} [recipeId]
 * @property {string} note
 * @property {string[]} news  such as ["new"], ["moved", "2 changes"]; empty if it is as it was
 */

/**
 * @param {any} setlist content
 * @param {any} [comparison] against the last set that was played
 * @returns {Line[]} in the order they are played
 */
export function linesOf(setlist, comparison) {
  const byPiece = new Map((comparison?.pieces ?? []).map((piece) => [piece.pieceId, piece]));
  return Object.values(setlist.items ?? {})
    .sort((one, other) => one.order - other.order)
    .map((item) => ({ pieceId: item.piece, recipeId: item.recipe?.id, note: item.note ?? '', news: newsOf(byPiece.get(item.piece)) }));
}

function newsOf(piece) {
  if (!piece) return [];
  if (piece.change === 'added') return ['new'];
  const changes = piece.changes?.length ?? 0;
  return [piece.moved ? 'moved' : null, changes ? `${changes} ${changes === 1 ? 'change' : 'changes'}` : null].filter(Boolean);
}

/**
 * The change of one string's sensitivity, if the comparison tells of one. A set may be played on several rigs.
 *
 * @param {any} comparison
 * @param {string} rigId of the rig as it is now
 * @param {string} string its number
 */
export function sensitivityChange(comparison, rigId, string) {
  return (comparison?.rig ?? [])
    .filter((rig) => rig.nowId === rigId)
    .flatMap((rig) => rig.changes)
    .find((change) => change.pointer === `/assignments/${string}/sensitivity`);
}

/**
 * Over the set: "Tonight", "The next set, in 3 days", "Yesterday, not marked as played": a plan that was never marked as played is no next set any more.
 *
 * @param {string} date ISO
 * @param {string} today ISO
 */
export function when(date, today) {
  const words = dayFrom(date, today);
  if (date < today) return `${words.charAt(0).toUpperCase()}${words.slice(1)}, not marked as played`;
  return date === today ? 'Tonight' : `The next set, ${words}`;
}
