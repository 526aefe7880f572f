/** log.js: what happened, newest first; to search, to add a line, to edit one. */
import { allSheets, listSheets, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { findDraft, findNewDraft } from '../drafts.js';
import { LogEntry } from '../parts/log-entry.js';
import { LogEntryForm } from '../parts/log-entry-form.js';
import { PageHead } from '../parts/page-head.js';
import { SearchField } from '../parts/search-field.js';
import { newSheet, openSheet } from '../save.js';
import { asSentence, localDay } from '../words-rules.js';
import { blankEntry } from './log-rehearsal-rules.js';
import { byMonth } from './log-rules.js';

export async function show(page) {
  page.title('Log');
  PageHead(page.leaf, {
    title: 'Log',
    doors: [
      el('a', { class: 'button inked', href: '/new/log' }, 'Log a rehearsal'),
      el('button', { type: 'button', class: 'writes', on: { click: write } }, 'Write a line'),
    ],
  });
  const form = el('div');
  const field = el('div');
  const list = el('div', { class: 'log-list' });
  const more = el('button', { type: 'button', hidden: true, on: { click: earlier } }, 'Earlier');
  const articles = new Map();
  let entries = [];
  let sought = null;
  let line = null;
  let after;
  let words = '';
  page.leaf.append(form, field, list, more);
  const titles = await titlesOf(['rigs', 'setlists', 'recipes', 'pieces', 'instruments', 'synths']);
  await load();
  if (entries.length > 5) SearchField(field, { label: 'Find in the log', onSearch: search });
  if (findNewDraft('log')) openLine();
  await seek();
  addEventListener('hashchange', seek);

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
    draw();
  }

  async function earlier() {
    more.disabled = true;
    await tried(load);
    more.disabled = false;
  }

  /** The entry that the address names may lie further back than the list goes, and may be named while the page is open. */
  async function seek() {
    if (location.hash.length < 2) return;
    await tried(async () => {
      const id = decodeURIComponent(location.hash.slice(1));
      if (!isListed(id)) {
        sought = await readSheet('log', id);
        draw();
      }
      articles.get(id).scrollIntoView({ block: 'start' });
    });
  }

  async function tried(work) {
    try {
      await work();
    } catch (failure) {
      page.say(asSentence(failure.message));
    }
  }

  function isListed(id) {
    return entries.some((entry) => entry.id === id);
  }

  function draw() {
    fill(list,
      sought && !isListed(sought.id) ? months([sought], 'Further back: ') : null,
      entries.length === 0
        ? el('p', { class: 'pencil' }, words ? `Nothing in the log says “${words}”.` : 'Nothing is written yet.')
        : months(entries));
  }

  function months(some, before = '') {
    return byMonth(some).map(([month, group]) => el('section', {}, el('h2', {}, before, month), group.map(article)));
  }

  /** The same one each time: it may be open for editing. */
  function article(envelope) {
    const known = articles.get(envelope.id);
    if (known) return known;
    const element = el('article');
    const edit = () => tried(async () => {
      const keeping = await openSheet('log', envelope.id);
      LogEntryForm(fill(element), keeping, { onSaved: () => showSaved(keeping) });
    });
    articles.set(envelope.id, element);
    LogEntry(element, envelope, { titles, onEdit: edit });
    if (findDraft('log', envelope.id)) edit();
    return element;
  }

  function write() {
    openLine();
    form.querySelector('textarea').focus();
  }

  function openLine() {
    if (line) return;
    line = newSheet('log', { ...blankEntry(localDay(new Date())), event: 'practice', about: {} });
    LogEntryForm(form, line, { onSaved: () => showSaved(line) });
  }

  function showSaved(keeping) {
    if (keeping.isDirty) page.say('Written down, but for what you typed meanwhile: write that down as well.');
    else location.reload();
  }
}

async function titlesOf(kinds) {
  const sheets = await Promise.all(kinds.map((kind) => allSheets(kind)));
  return new Map(sheets.flat().map((sheet) => [sheet.id, sheet.title]));
}
