/**
 * page-head.js: the name of the page over the strings that run across the paper.
 *
 *   PageHead(leaf, { kicker: 'Rig', title: 'Stage violin', lead: '…', doors: [el('a', …)] })   // stands above leaf and margin
 *
 * `title` may be an element, such as an editable value.
 */
import { el } from '../dom.js';

/**
 * @param {HTMLElement} leaf
 * @param {{ kicker?: any, title: any, lead?: any, doors?: any[] }} state
 * @returns {{ element: HTMLElement, show: (next: { kicker?: any, title?: any, lead?: any }) => void }}
 */
export function PageHead(leaf, { kicker, title, lead, doors = [] }) {
  const above = el('p', { class: 'kicker' }, kicker);
  const name = el('h1', {}, title);
  const below = el('p', { class: 'lead' }, lead);
  const element = el('header', { class: 'page-head' },
    el('div', { class: 'standing' },
      el('div', {}, above, name, below),
      doors.length ? el('div', { class: 'doors' }, doors) : null),
    el('div', { class: 'strings', 'aria-hidden': 'true' }));
  above.hidden = !kicker;
  below.hidden = !lead;
  // Across leaf and margin: strings do not end in the middle of the paper.
  (leaf.closest('.sheet') ?? leaf).prepend(element);
  return {
    element,
    show(next) {
      if ('kicker' in next) above.replaceChildren(next.kicker ?? '');
      if ('title' in next) name.replaceChildren(next.title ?? '');
      if ('lead' in next) below.replaceChildren(next.lead ?? '');
      above.hidden = !above.textContent;
      below.hidden = !below.textContent;
    },
  };
}
