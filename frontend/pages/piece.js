/** piece.js: one piece: what is written about it, the recipes for it, the sets it was in. */
import { allSheets, get, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { ChangeList } from '../parts/change-list.js';
import { editableTitle } from '../parts/gear-page.js';
import { HistoryList } from '../parts/history-list.js';
import { NotRead } from '../parts/not-read.js';
import { OldRevision } from '../parts/old-revision.js';
import { PageHead } from '../parts/page-head.js';
import { PieceFacts } from '../parts/piece-facts.js';
import { SaveBar } from '../parts/save-bar.js';
import { UsedBy } from '../parts/used-by.js';
import { sheetAddress } from '../places-rules.js';
import { openSheet } from '../save.js';
import { shortDay } from '../words-rules.js';

export async function show(page, { params: { id }, query }) {
  page.twoColumns();
  const keeping = await openSheet('pieces', id);
  const old = Number(query.get('revision')) || 0;
  if (old && old !== keeping.envelope?.revision) {
    await showOld(page, id, old, keeping.envelope?.revision);
    return;
  }
  page.title(keeping.content.title);
  PageHead(page.leaf, { kicker: 'Piece', title: editableTitle(keeping) });
  PieceFacts(page.leaf, keeping);
  const recipes = el('section');
  page.leaf.append(recipes);
  const reading = drawRecipes();
  SaveBar(page.leaf, keeping, { askWhy: true, ready: () => (keeping.content.title?.trim() ? null : 'Give the piece a name first.'), onSaved: (envelope) => {
    page.title(envelope.title);
    drawMargin();
  } });
  drawMargin();
  await reading;

  async function drawRecipes() {
    try {
      await tellRecipes();
    } catch (failure) {
      NotRead(recipes, failure, drawRecipes);
    }
  }

  async function tellRecipes() {
    const own = (await allSheets('recipes')).filter(({ content }) => content.piece === id);
    fill(recipes,
      el('h2', {}, 'Recipes for it'),
      own.length ? el('ul', { class: 'ruled' }, own.map(({ id: recipe, title, extras = {} }) => el('li', {}, el('a', { class: 'line', href: sheetAddress('recipes', recipe) },
        el('span', { class: 'name' }, title),
        el('span', { class: 'pencil' }, extras.followsTitle ? `on top of ${extras.followsTitle}` : 'stands alone'),
        el('span', { class: 'aside' }, extras.lastPlayed ? `last played ${shortDay(extras.lastPlayed)}` : 'not played yet')))))
        : el('p', { class: 'pencil' }, 'No recipe yet.'),
      el('div', { class: 'buttons' }, el('a', { class: 'button', href: `/new/recipes?piece=${id}` }, 'New recipe for it')));
  }

  function drawMargin() {
    const users = el('div');
    const past = el('div');
    fill(page.margin, el('h2', {}, 'Where it is used'), users, el('h2', {}, 'History'), past);
    if (!keeping.envelope) return;
    UsedBy(users, { kind: 'pieces', id, none: 'In no set and no recipe yet.' });
    HistoryList(past, { kind: 'pieces', id, current: keeping.envelope.revision });
  }
}

async function showOld(page, id, revision, newest) {
  const [old, { changes }] = await Promise.all([readSheet('pieces', id, revision), get(`/api/pieces/${id}/compare`, { was: revision, now: newest })]);
  page.title(`${old.title}, revision ${revision}`);
  PageHead(page.leaf, { kicker: 'Piece', title: old.title });
  OldRevision(page.leaf, { envelope: old, newest });
  const list = el('div');
  page.leaf.append(el('h2', {}, 'What has changed since'), list);
  ChangeList(list, changes);
}
