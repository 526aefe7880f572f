/** setlist-comparison-rules.js: a comparison of two sets as a player would tell it. No DOM. */

/**
 * @param {any} comparison as the server gives it
 * @returns {{ added: any[], dropped: any[], moved: any[], changed: any[], same: any[] }} each in the order it is played;
 *   a piece that both moved and changed stands in both
 */
export function told(comparison) {
  const pieces = comparison.pieces ?? [];
  const kept = pieces.filter(({ change }) => change === 'kept').sort(byPosition('nowPosition'));
  return {
    added: pieces.filter(({ change }) => change === 'added').sort(byPosition('nowPosition')),
    dropped: pieces.filter(({ change }) => change === 'dropped').sort(byPosition('wasPosition')),
    moved: kept.filter(({ moved }) => moved),
    changed: kept.filter((piece) => piece.changes.length > 0 || otherRecipe(piece)),
    same: kept.filter((piece) => !piece.moved && piece.changes.length === 0 && !otherRecipe(piece)),
  };
}

/** Whether another recipe is used for the piece, by its title. @param {any} piece */
export function otherRecipe(piece) {
  return (piece.wasRecipe ?? '') !== (piece.nowRecipe ?? '');
}

/**
 * How a move is told: by the place, or, where the number stayed while others moved around it, by the piece before it.
 *
 * @param {any} comparison
 * @param {any} piece a kept one that moved
 * @returns {[string, string]} was, now
 */
export function moveWords(comparison, piece) {
  if (piece.wasPosition !== piece.nowPosition) return [ordinal(piece.wasPosition), ordinal(piece.nowPosition)];
  const after = (field) => {
    const before = comparison.pieces.find((each) => each[field] === piece[field] - 1);
    return before ? `after ${before.title}` : 'first';
  };
  return [after('wasPosition'), after('nowPosition')];
}

/** "1st", "2nd", "11th". @param {number} position */
export function ordinal(position) {
  const ending = { one: 'st', two: 'nd', few: 'rd', other: 'th' }[new Intl.PluralRules('en', { type: 'ordinal' }).select(position)];
  return `${position}${ending}`;
}

/**
 * Where a set of the address lies: "id@3" is exactly revision 3, "id" the newest.
 *
 * @param {string | null} spot
 * @returns {{ id: string, revision?: number } | null}
 */
export function spotOf(spot) {
  const [, id, revision] = /^([^@]+)(?:@(\d+))?$/.exec(spot ?? '') ?? [];
  return id ? { id, ...(revision ? { revision: Number(revision) } : {}) } : null;
}

function byPosition(field) {
  return (one, other) => one[field] - other[field];
}
