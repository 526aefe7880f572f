/**
 * used-by.js: the sheets that name this one.
 *
 *   UsedBy(element, { kind: 'rigs', id })
 */
import { get } from '../api.js';
import { el, fill } from '../dom.js';
import { KIND_WORDS, sheetAddress } from '../places-rules.js';

const SHOWN = 6;

/** @param {HTMLElement} element @param {{ kind: string, id: string, none?: string }} state */
export async function UsedBy(element, { kind, id, none = 'Nothing names it yet.' }) {
  try {
    const { items } = await get(`/api/${kind}/${encodeURIComponent(id)}/used-by`);
    fill(element, items.length === 0
      ? el('p', { class: 'pencil' }, none)
      : el('ul', { class: 'ruled' }, items.slice(0, SHOWN).map((item) => el('li', {},
        el('a', { class: 'line', href: sheetAddress(item.kind, item.id) },
          el('span', {}, item.title), el('span', { class: 'aside' }, KIND_WORDS[item.kind] ?? item.kind))))),
      items.length > SHOWN ? el('p', { class: 'pencil' }, `and ${items.length - SHOWN} more`) : null);
  } catch (failure) {
    fill(element, el('p', { class: 'unsafe' }, failure.message));
  }
}
