/**
 * string-board.js: strings as lines across the page, highest on top, thinnest first. Whatever belongs to a string sits on it.
 *
 *   const board = StringBoard(element, { label: 'Sensitivity per string' });
 *   board.row('1', 'E5', [stepperElement], [inputElement]);   // what sits on the string; what it ends in
 */
import { el } from '../dom.js';
import { noteName } from '../words-rules.js';

/** @param {HTMLElement} element @param {{ label: string }} state */
export function StringBoard(element, { label }) {
  const list = el('ol', { class: 'strings-across', 'aria-label': label });
  element.classList.add('string-board');
  element.append(list);
  return {
    element,
    /**
     * @param {string} number 1 = highest
     * @param {any} note its open note, or an element
     * @param {any[]} sitting
     * @param {any[]} [end]
     * @returns {HTMLElement} the row
     */
    row(number, note, sitting, end = []) {
      const row = el('li', { class: 'string-row' },
        el('span', { class: 'nut' },
          el('span', { class: 'unseen' }, 'String '), el('b', {}, number),
          el('span', { class: 'note' }, typeof note === 'string' ? noteName(note) : note)),
        sitting.map((each) => el('span', { class: 'sitting' }, each)),
        end.length ? el('span', { class: 'end' }, end) : null);
      row.style.setProperty('--gauge', `${gauge(Number(number))}px`);
      list.append(row);
      return row;
    },
    clear() {
      list.replaceChildren();
    },
  };
}

/** How thick a string is drawn. @param {number} number 1 = highest */
export function gauge(number) {
  return 0.5 + 0.5 * number;
}
