/** pieces.js: what is played, by song or by style; searching while one types. */
import { allSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { PageHead } from '../parts/page-head.js';
import { SearchField } from '../parts/search-field.js';
import { sheetAddress } from '../places-rules.js';
import { counted, number, shortDay } from '../words-rules.js';
import { bySong, byStyle } from './pieces-rules.js';

export async function show(page, { query }) {
  page.title('Pieces');
  PageHead(page.leaf, { title: 'Pieces', doors: [el('a', { class: 'button inked', href: '/new/pieces' }, 'New piece')] });
  let by = query.get('by') === 'style' ? 'style' : 'song';
  let words = query.get('q') ?? '';
  let pieces = [];
  const field = el('div');
  const ways = el('div', { class: 'ways-to-browse', role: 'group', 'aria-label': 'Browse' }, way('song', 'by song'), way('style', 'by style'));
  const outcome = el('p', { class: 'pencil', role: 'status' });
  const list = el('div', { class: 'piece-list' });
  page.leaf.append(el('div', { class: 'browse' }, field, ways), outcome, list);
  // Before the field is there: the first answer can come over nothing that was typed.
  await search(words);
  SearchField(field, { label: 'Find a piece: title, style, composer, a word of a note', words, onSearch: search });

  async function search(next, signal) {
    const found = await allSheets('pieces', { q: next });
    if (signal?.aborted) return;
    words = next;
    pieces = found;
    draw();
  }

  function draw() {
    for (const button of ways.children) button.setAttribute('aria-pressed', String(button.dataset.by === by));
    outcome.textContent = pieces.length ? (words ? counted(pieces.length, 'piece') : '') : words ? `No piece says “${words}”.` : 'No piece is written down yet.';
    outcome.hidden = !outcome.textContent;
    fill(list, by === 'song' || pieces.length === 0
      ? el('ul', { class: 'ruled' }, bySong(pieces).map(line))
      : byStyle(pieces).map(([style, group]) => el('section', { class: 'of-style' },
        el('h2', {}, style || 'no style yet'), el('ul', { class: 'ruled' }, group.map(line)))));
    const address = new URLSearchParams([...(words ? [['q', words]] : []), ...(by === 'style' ? [['by', by]] : [])]);
    history.replaceState(null, '', address.size ? `?${address}` : location.pathname);
  }

  function way(which, label) {
    return el('button', { type: 'button', class: 'quiet', 'data-by': which, on: { click: () => {
      by = which;
      draw();
    } } }, label);
  }

  function line({ id, title, content, extras = {} }) {
    const facts = [content.composer, by === 'song' ? (content.styles ?? []).join(', ') : '', content.key, content.tempoBpm ? `${number(content.tempoBpm)} bpm` : ''];
    return el('li', {}, el('a', { class: 'line', href: sheetAddress('pieces', id) },
      el('span', { class: 'name' }, title),
      el('span', { class: 'aside' }, extras.lastPlayed ? [el('span', { class: 'wide-only' }, 'last played '), shortDay(extras.lastPlayed)] : 'not played yet'),
      el('span', { class: 'about pencil' }, facts.filter(Boolean).join(' · ')),
      el('span', { class: 'aside' }, extras.recipes ? counted(extras.recipes, 'recipe') : 'no recipe')));
  }
}
