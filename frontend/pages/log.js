/** log.js: what happened, newest first; to search, to add a line, to edit one. */
import { allSheets, listSheets, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { findDraft, findNewDraft } from '../drafts.js';
import { LogEntry } from '../parts/log-entry.js';
import { LogEntryForm } from '../parts/log-entry-form.js';
import { PageHead } from '../parts/page-head.js';
import { SearchField } from '../parts/search-field.js';
import { anchorOf } from '../places-rules.js';
import { newSheet, openSheet } from '../save.js';
import { asSentence, localDay } from '../words-rules.js';
import { blankEntry } from './log-rehearsal-rules.js';
import { byMonth } from './log-rules.js';

const ENTRY_ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

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
  let asked = 0;
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
    const turn = ++asked;
    const found = await listSheets('log', { q: words, limit: 50, after }, signal);
    // Of several answers under way only the newest counts.
    if (turn !== asked) return;
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
    const id = anchorOf(location.hash);
    // The way to the page itself is an anchor, too.
    if (!ENTRY_ID.test(id)) return;
    await tried(async () => {
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
    const open = async () => {
      const keeping = await openSheet('log', envelope.id);
      LogEntryForm(fill(element), keeping, { onSaved: () => showSaved(keeping) });
    };
    const edit = () => tried(async () => {
      await open();
      element.querySelector('textarea').focus();
    });
    articles.set(envelope.id, element);
    LogEntry(element, envelope, { titles, onEdit: edit });
    if (findDraft('log', envelope.id)) tried(open);
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
