/**
 * find-dialog.js: looks through the whole notebook from any page. Opens with the button or with the key "/".
 */
import { get } from '../api.js';
import { el, fill } from '../dom.js';
import { KIND_WORDS, sheetAddress } from '../places-rules.js';
import { SearchField } from './search-field.js';

/** @returns {{ open: () => void }} */
export function FindDialog() {
  const results = el('ul', { class: 'ruled' });
  const outcome = el('output', { class: 'pencil' });
  const place = el('div');
  const dialog = el('dialog', { class: 'find-dialog', 'aria-label': 'Find in the notebook' },
    place, outcome, results,
    el('form', { method: 'dialog', class: 'buttons' }, el('button', { class: 'quiet' }, 'Close')));
  const field = SearchField(place, { label: 'Find in the notebook', onSearch: search });
  document.body.append(dialog);
  // A hit on the page that is open loads nothing.
  results.addEventListener('click', () => dialog.close());
  addEventListener('keydown', (event) => {
    const typing = /** @type {HTMLElement} */ (event.target).closest?.('input, textarea, select, dialog');
    if (event.key === '/' && !typing && !event.ctrlKey && !event.metaKey) {
      event.preventDefault();
      open();
    }
  });
  return { open };

  function open() {
    dialog.showModal();
    field.focus();
  }

  async function search(words, signal) {
    if (!words) {
      fill(results);
      outcome.textContent = '';
      return;
    }
    const { items } = await get('/api/search', { q: words }, signal);
    outcome.textContent = items.length ? '' : `Nothing says “${words}”.`;
    fill(results, items.map((item) => el('li', {}, el('a', { class: 'line', href: sheetAddress(item.kind, item.id) },
      el('span', { class: 'name' }, item.title),
      el('span', { class: 'aside' }, KIND_WORDS[item.kind] ?? item.kind),
      item.snippet ? el('span', { class: 'snippet pencil small' }, item.snippet) : null))));
  }
}
