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
