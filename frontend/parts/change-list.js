/**
 * change-list.js: changes as a player would write them: pencilled old value, arrow, inked new value, difference.
 *
 *   ChangeList(element, changes)          // a list, grouped by the first word of `where`
 *   changeWords(change)                   // the nodes of one change, for use inside other lists
 *
 * A change is the API's readable change: { where, change, was, now, difference, unit }.
 */
import { el, fill } from '../dom.js';

/**
 * @typedef {Object} Readable
 * @property {string[]} where
 * @property {'changed' | 'added' | 'removed' | 'moved'} change
 * @property {string} [was]
 * @property {string} [now]
 * @property {string} [difference]
 * @property {string} [unit]
 */

/** @param {HTMLElement} element @param {Readable[]} changes @param {{ none?: string }} [words] */
export function ChangeList(element, changes, { none = 'Nothing differs.' } = {}) {
  element.classList.add('change-list');
  if (changes.length === 0) {
    fill(element, el('p', { class: 'pencil' }, none));
    return;
  }
  fill(element, el('ul', {}, grouped(changes).map(([place, group]) => el('li', { class: 'keep-together' },
    place ? el('span', { class: 'place' }, place) : null,
    el('ul', {}, group.map((change) => el('li', {}, changeWords(change, change.where.slice(1)))))))));
}

/** Changes next to each other in the same place share one heading. @param {Readable[]} changes @returns {[string, Readable[]][]} */
function grouped(changes) {
  const groups = [];
  for (const change of changes) {
    const place = change.where[0] ?? '';
    if (groups.at(-1)?.[0] !== place) groups.push([place, []]);
    groups.at(-1)[1].push(change);
  }
  return groups;
}

/**
 * @param {Readable} change
 * @param {string[]} [where] how much of the place to write
 * @returns {Node[]}
 */
export function changeWords(change, where = change.where) {
  const place = where.length ? el('span', { class: 'what' }, where.join(', ')) : null;
  return [place, el('span', { class: 'alteration' }, alteration(change))].filter(Boolean);
}

function alteration({ change, was, now, difference, unit }) {
  if (change === 'moved') return [pencilled(was), arrow(), inked(now), ' moved'];
  if (change === 'added') return [now ? [inked(now, unit), ' '] : null, el('em', {}, 'new')];
  if (change === 'removed') return [was ? [pencilled(was, unit), ' '] : null, el('em', {}, 'left out')];
  return [pencilled(was || 'nothing'), arrow(), inked(now || 'nothing', unit),
    difference ? el('span', { class: 'difference' }, ` (${difference})`) : null];
}

function pencilled(words, unit) {
  return words ? el('del', {}, words, unitOf(unit)) : null;
}

function inked(words, unit) {
  return words ? el('ins', {}, words, unitOf(unit)) : null;
}

function unitOf(unit) {
  return unit ? el('span', { class: 'unit' }, unit) : null;
}

function arrow() {
  return el('span', { class: 'arrow' }, el('span', { 'aria-hidden': 'true' }, ' → '), el('span', { class: 'unseen' }, ' became '));
}
