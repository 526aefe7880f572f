/**
 * fold.js: a part of a long page that folds. Appends itself.
 *
 *   const body = Fold(leaf, { title: 'Connector', open: false, note: '8 pins' });   // draw into body
 */
import { el } from '../dom.js';

/** @param {HTMLElement} leaf @param {{ title: string, open?: boolean, note?: string }} state @returns {HTMLElement} */
export function Fold(leaf, { title, open = false, note = '' }) {
  const body = el('div', { class: 'body' });
  leaf.append(el('details', { class: 'fold', open },
    el('summary', {}, el('h2', {}, title), note ? el('span', { class: 'pencil' }, note) : null), body));
  return body;
}
