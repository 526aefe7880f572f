/**
 * add-piece.js: looks for a piece while one types, and puts it at the end of the set. Down and up arrows go through what was found.
 *
 *   AddPiece(element, { onAdd: (piece) => { … } });   // piece: envelope
 */
import { listSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { SearchField } from './search-field.js';

/** @param {HTMLElement} element @param {{ onAdd: (piece: import('../api.js').Envelope) => void }} state */
export function AddPiece(element, { onAdd }) {
  const place = el('div');
  const found = el('ul', { class: 'found' });
  const outcome = el('p', { class: 'pencil', role: 'status' });
  /** The words whose pieces are listed. */
  let listed = '';
  element.classList.add('add-piece', 'no-print');
  fill(element, place, outcome, found);
  SearchField(place, { label: 'Add a piece', onSearch: search });
  const input = place.querySelector('input');
  element.addEventListener('keydown', (event) => {
    const stops = [input, ...found.querySelectorAll('button')];
    const at = stops.indexOf(/** @type {any} */ (event.target));
    const next = { ArrowDown: at + 1, ArrowUp: at - 1 }[event.key];
    if (event.key === 'Escape') clear();
    if (event.key === 'Enter' && at === 0 && stops[1] && input.value.trim() === listed) {
      event.preventDefault();
      event.stopPropagation();
      stops[1].click();
      return;
    }
    if (next === undefined || !stops[next]) return;
    event.preventDefault();
    stops[next].focus();
  }, { capture: true });

  async function search(words, signal) {
    if (!words) {
      show(words, [], []);
      return;
    }
    const { items } = await listSheets('pieces', { q: words, limit: 8 }, signal);
    // Meanwhile other words may stand in the field, or none.
    if (words !== input.value.trim()) return;
    show(words, items.length ? [] : [`No piece says “${words}”. `, el('a', { href: '/new/pieces' }, 'Write it down')], items.map((piece) => el('li', {}, el('button', { type: 'button', class: 'quiet', on: { click: () => {
      onAdd(piece);
      clear();
    } } }, el('span', { class: 'name' }, piece.title), el('span', { class: 'pencil' }, [piece.content.key, (piece.content.styles ?? []).join(', ')].filter(Boolean).join(' · '))))));
  }

  function show(words, said, entries) {
    listed = words;
    fill(outcome, said);
    fill(found, entries);
  }

  function clear() {
    show('', [], []);
    input.value = '';
    input.focus();
  }
}
