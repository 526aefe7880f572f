/** recipes-rules.js: recipes in the order one looks for them. No DOM. */

/**
 * @param {import('../api.js').Envelope[]} recipes
 * @returns {{ startingPoints: any[], pieces: [string, any[]][] }} most followed starting points first; pieces by title
 */
export function byPiece(recipes) {
  const startingPoints = recipes.filter(({ content }) => !content.piece)
    .sort((one, other) => (other.extras?.followers ?? 0) - (one.extras?.followers ?? 0) || one.title.localeCompare(other.title));
  const groups = new Map();
  for (const recipe of recipes) {
    const { piece } = recipe.content;
    if (piece) groups.set(piece, [...(groups.get(piece) ?? []), recipe]);
  }
  const pieces = [...groups.values()]
    .map((group) => /** @type {[string, any[]]} */ ([group[0].extras?.pieceTitle ?? 'A piece that is no longer here', group]))
    .sort(([one], [other]) => sortingTitle(one).localeCompare(sortingTitle(other)));
  return { startingPoints, pieces };
}

/** A title without its article, as players look it up. @param {string} title */
export function sortingTitle(title) {
  return title.replace(/^(the|an?) /i, '');
}
