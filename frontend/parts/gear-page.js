/**
 * gear-page.js: what the pages of instruments and synths share: head, form, saving, history, where used, and an earlier
 * revision to look at.
 */
import { get, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { KIND_WORDS } from '../places-rules.js';
import { openSheet } from '../save.js';
import { ChangeList } from './change-list.js';
import { Editable } from './editable.js';
import { HistoryList } from './history-list.js';
import { OldRevision } from './old-revision.js';
import { PageHead } from './page-head.js';
import { SaveBar } from './save-bar.js';
import { UsedBy } from './used-by.js';

/**
 * @param {any} page
 * @param {{ kind: string, id: string, revision: number, draw: (leaf: HTMLElement, keeping: any) => void, ready: (content: any) => string | null }} state
 */
export async function showGear(page, { kind, id, revision, draw, ready }) {
  page.twoColumns();
  const word = KIND_WORDS[kind];
  const kicker = word[0].toUpperCase() + word.slice(1);
  const keeping = await openSheet(kind, id);
  const newest = keeping.envelope?.revision;
  if (revision && revision !== newest) {
    await showOld();
    return;
  }
  page.title(keeping.content.title);
  PageHead(page.leaf, { kicker, title: editableTitle(keeping) });
  draw(page.leaf, keeping);
  SaveBar(page.leaf, keeping, { askWhy: true, ready: () => ready(keeping.content), onSaved: drawMargin });
  drawMargin();

  function drawMargin() {
    page.margin.classList.add('no-print');
    const history = el('div');
    const users = el('div');
    fill(page.margin, el('h2', {}, 'Where it is used'), users, el('h2', {}, 'History'), history);
    if (!keeping.envelope) return;
    UsedBy(users, { kind, id });
    HistoryList(history, { kind, id, current: keeping.envelope.revision });
  }

  /** What changed since says more than a form that cannot be written in. */
  async function showOld() {
    const [old, comparison] = await Promise.all([
      readSheet(kind, id, revision),
      get(`/api/${kind}/${encodeURIComponent(id)}/compare`, { was: revision, now: newest }),
    ]);
    page.title(`${old.title}, revision ${revision}`);
    PageHead(page.leaf, { kicker, title: old.title });
    OldRevision(page.leaf, { envelope: old, newest });
    const changes = el('div');
    page.leaf.append(el('h2', {}, 'What has changed since'), changes);
    ChangeList(changes, comparison.changes);
  }
}

/** The name of a sheet as an editable heading. @param {import('../save.js').Keeping} keeping @param {string} [empty] */
export function editableTitle(keeping, empty = 'give it a name') {
  const place = el('span');
  const title = Editable(place, { label: 'Name', isHeading: true, value: keeping.content.title ?? '', empty, onEdit: (value) => keeping.change((content) => { content.title = value; }) });
  keeping.onChange(() => title.show({ value: keeping.content.title ?? '' }));
  return place;
}
