/** pieces-rules.js: styles and browsing by them. No DOM. */
import { sortingTitle } from './recipes-rules.js';

/** What was typed as styles: "Reel, slow air" becomes reel and slow air, each once. @param {string} typed @returns {string[]} */
export function stylesOf(typed) {
  return [...new Set(typed.split(/[,;\n]/).map((style) => style.trim().toLowerCase()).filter(Boolean))].slice(0, 20);
}

/**
 * Pieces under each of their styles; a piece with two styles stands twice.
 *
 * @param {import('../api.js').Envelope[]} pieces
 * @returns {[string, any[]][]} styles by name, those without any last, under ''
 */
export function byStyle(pieces) {
  const groups = new Map();
  for (const piece of pieces) {
    const { styles = [] } = piece.content;
    for (const style of styles.length ? styles : ['']) groups.set(style, [...(groups.get(style) ?? []), piece]);
  }
  return [...groups].map(([style, group]) => /** @type {[string, any[]]} */ ([style, bySong(group)]))
    .sort(([one], [other]) => Number(one === '') - Number(other === '') || one.localeCompare(other));
}

/** By title, articles left aside. @param {any[]} pieces */
export function bySong(pieces) {
  return [...pieces].sort((one, other) => sortingTitle(one.title).localeCompare(sortingTitle(other.title)));
}
