/** log.js: what happened, newest first; to search, to add a line, to edit one. */
import { allSheets, listSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { LogEntry } from '../parts/log-entry.js';
import { LogEntryForm } from '../parts/log-entry-form.js';
import { PageHead } from '../parts/page-head.js';
import { SearchField } from '../parts/search-field.js';
import { newSheet, openSheet } from '../save.js';
import { localDay } from '../words-rules.js';
import { blankEntry } from './log-rehearsal-rules.js';
import { byMonth } from './log-rules.js';

export async function show(page) {
  page.title('Log');
  PageHead(page.leaf, {
    title: 'Log',
    doors: [
      el('a', { class: 'button inked', href: '/new/log' }, 'Log a rehearsal'),
      el('button', { type: 'button', on: { click: write } }, 'Write a line'),
    ],
  });
  const form = el('div');
  const field = el('div');
  const list = el('div', { class: 'log-list' });
  const more = el('button', { type: 'button', hidden: true, on: { click: () => load() } }, 'Earlier');
  let entries = [];
  let after;
  let words = '';
  page.leaf.append(form, field, list, more);
  const titles = await titlesOf(['rigs', 'setlists', 'recipes', 'pieces', 'instruments', 'synths']);
  await load();
  if (entries.length > 5) SearchField(field, { label: 'Find in the log', onSearch: search });

  async function search(next, signal) {
    words = next;
    entries = [];
    after = undefined;
    await load(signal);
  }

  async function load(signal) {
    const found = await listSheets('log', { q: words, limit: 50, after }, signal);
    entries.push(...found.items);
    after = found.next;
    more.hidden = !after;
    fill(list, entries.length === 0
      ? el('p', { class: 'pencil' }, words ? `Nothing in the log says “${words}”.` : 'Nothing is written yet.')
      : byMonth(entries).map(([month, group]) => el('section', {}, el('h2', {}, month), group.map(article))));
  }

  function article(envelope) {
    const element = el('article');
    LogEntry(element, envelope, { titles, onEdit: async () => {
      const keeping = await openSheet('log', envelope.id);
      LogEntryForm(fill(element), keeping, { onSaved: () => location.reload() });
    } });
    return element;
  }

  function write() {
    const keeping = newSheet('log', { ...blankEntry(localDay(new Date())), event: 'practice', about: {} });
    LogEntryForm(form, keeping, { onSaved: () => location.reload() });
    form.querySelector('textarea').focus();
  }
}

async function titlesOf(kinds) {
  const sheets = await Promise.all(kinds.map((kind) => allSheets(kind)));
  return new Map(sheets.flat().map((sheet) => [sheet.id, sheet.title]));
}
