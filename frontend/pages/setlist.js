/** setlist.js: one set: date and place, the pieces in order, what each is played with. */
import { actOnSheet, allSheets, get, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { same } from '../drafts-rules.js';
import { keyedList } from '../keyed-list.js';
import { ordersAfterMove } from '../order-rules.js';
import { AddPiece } from '../parts/add-piece.js';
import { ChangeList } from '../parts/change-list.js';
import { Fact } from '../parts/editable.js';
import { editableTitle } from '../parts/gear-page.js';
import { HistoryList } from '../parts/history-list.js';
import { MovableList } from '../parts/movable-list.js';
import { OldRevision } from '../parts/old-revision.js';
import { PageHead } from '../parts/page-head.js';
import { SaveBar } from '../parts/save-bar.js';
import { SetItem } from '../parts/set-item.js';
import { ShareDialog } from '../parts/share-dialog.js';
import { StageSheet } from '../parts/stage-sheet.js';
import { setlistComparisonAddress } from '../places-rules.js';
import { openSheet } from '../save.js';
import { readSounds, readSurroundings } from '../set-surroundings.js';
import { longDay, shortDay } from '../words-rules.js';
import { addPiece, lastTime, playingOrder, referenceTo } from './setlist-rules.js';
import { stageLines } from './stage-rules.js';

export async function show(page, { params: { id }, query }) {
  const [keeping, around, sets] = await Promise.all([openSheet('setlists', id), readSurroundings(), allSheets('setlists')]);
  const old = Number(query.get('revision')) || 0;
  page.twoColumns();
  if (old && old !== keeping.envelope?.revision) {
    await showOld(page, await readSheet('setlists', id, old), keeping.envelope?.revision, around);
    return;
  }
  page.title(keeping.content.title);
  const head = PageHead(page.leaf, { kicker: kicker(), title: editableTitle(keeping), doors: doors() });
  const sheet = el('section');
  /** Sounds by item, each with the recipe it was read from; the items they were asked for last. */
  let heard = new Map();
  let asked = {};
  drawFacts();
  const items = drawItems(page.leaf, keeping, around);
  const add = el('div');
  page.leaf.append(add, sheet);
  AddPiece(add, { onAdd: (piece) => {
    around.pieces.set(piece.id, piece);
    keeping.change((content) => addPiece(content, piece.id, [...around.recipes.values()].filter((recipe) => recipe.content.piece === piece.id)));
    page.say(`${piece.title} is the last piece now.`);
  } });
  SaveBar(page.leaf, keeping, { askWhy: true, ready: () => missing(keeping.content), onSaved: (envelope) => {
    page.title(envelope.title);
    drawMargin();
    hear();
  } });
  keeping.onChange(() => {
    items.update();
    head.show({ kicker: kicker() });
    drawSheet();
  });
  drawMargin();
  drawSheet();

  function kicker() {
    return keeping.content.state === 'played' ? 'Set, as it was played' : 'Set';
  }

  function doors() {
    const before = lastTime(sets, { id, content: keeping.content });
    return [
      el('a', { class: 'button inked', href: `/stage/${id}` }, 'On stage'),
      before ? el('a', { class: 'button', href: setlistComparisonAddress({ id: before.id }, { id }) }, 'Compare with last time') : null,
      el('button', { type: 'button', class: 'writes', on: { click: () => ShareDialog(keeping).open() } }, 'Share'),
      el('button', { type: 'button', on: { click: () => print() } }, 'Print the stage sheet'),
    ].filter(Boolean);
  }

  function drawFacts() {
    const list = el('dl', { class: 'facts' });
    page.leaf.append(list);
    const rows = [
      row('date', { label: 'Date', kind: 'date', check: (value) => (value ? null : 'A set has a date.') }),
      row('place', { label: 'Place', empty: 'where?' }),
      rigRow(),
      row('notes', { label: 'Notes', kind: 'long', empty: 'add a note' }),
    ];
    keeping.onChange(() => rows.forEach((each) => each()));

    function row(field, state) {
      const fact = Fact(list, { ...state, value: keeping.content[field] ?? '', onEdit: (value) => keeping.change((content) => { content[field] = value; }) });
      return () => fact.show({ value: keeping.content[field] ?? '' });
    }

    function rigRow() {
      const fact = Fact(list, { label: 'Rig', kind: 'choice', value: keeping.content.rig?.id ?? '', empty: 'not decided',
        choices: [...[...around.rigs.values()].map((rig) => [rig.id, rig.title]), ['', 'not decided']],
        onEdit: (value) => keeping.change((content) => { content.rig = referenceTo(content, around.rigs.get(value)); }) });
      return () => fact.show({ value: keeping.content.rig?.id ?? '' });
    }
  }

  function drawMargin() {
    const past = el('div');
    fill(page.margin, drawPlayed(), el('h2', {}, 'History'), past);
    if (keeping.envelope) HistoryList(past, { kind: 'setlists', id, current: keeping.envelope.revision });
  }

  function drawPlayed() {
    if (keeping.content.state === 'played') return el('section', {}, el('h2', {}, 'Played'), el('p', { class: 'pencil' }, `Every piece is held at the recipe and the rig as they were on ${shortDay(keeping.content.date)}.`));
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    return el('section', { class: 'no-print writes' }, el('h2', {}, 'After the evening'),
      el('p', { class: 'pencil' }, 'Marked as played, the set holds every recipe and rig exactly as they are now.'),
      el('button', { type: 'button', on: { click: async () => {
        if (keeping.isDirty) {
          trouble.textContent = 'Save what you have changed first, or throw it away.';
          return;
        }
        try {
          await actOnSheet(`/api/setlists/${id}/played`, keeping.baseRevision);
          location.reload();
        } catch (failure) {
          trouble.textContent = failure.message;
        }
      } } }, 'Mark as played'), trouble);
  }

  /** Paper shows what stands here now; a sound that is not read yet follows. */
  function drawSheet() {
    const { items: pieces } = keeping.content;
    const known = [...heard].filter(([key, { recipe }]) => same(pieces[key]?.recipe, recipe));
    drawStage(sheet, keeping.content, around, new Map(known.map(([key, { sound }]) => [key, sound])));
    if (Object.entries(pieces).some(([key, { recipe }]) => recipe && !same(asked[key]?.recipe, recipe))) hear();
  }

  async function hear() {
    const set = structuredClone(keeping.content);
    asked = set.items;
    let sounds;
    try {
      sounds = await readSounds(set, around);
    } catch {
      // Without the sounds the sheet still has the pieces.
      return;
    }
    if (asked !== set.items) return;
    heard = new Map([...sounds].map(([key, sound]) => [key, { recipe: set.items[key].recipe, sound }]));
    drawSheet();
  }
}

function drawStage(place, set, around, sounds) {
  StageSheet(place, { set, lines: stageLines(set, { ...around, sounds }) });
}

/** @param {HTMLElement} leaf */
function drawItems(leaf, keeping, around, readOnly = false) {
  const list = el('ol', { class: 'set-items', 'aria-label': 'The pieces in order' });
  const none = el('p', { class: 'pencil' }, 'No piece yet. Look one up below.');
  leaf.append(el('section', { class: 'programme-of-set' }, el('h2', {}, 'The pieces'), list, none));
  if (!readOnly) {
    MovableList(list, { onMove: (key, index) => keeping.change(({ items }) => {
      for (const [each, order] of Object.entries(ordersAfterMove(items, key, index))) items[each].order = order;
    }) });
  }
  update();
  return { update };

  function update() {
    const order = playingOrder(keeping.content);
    none.hidden = order.length > 0;
    keyedList(list, order, (key) => key, (key) => SetItem(el('li', { 'data-key': key }), keeping, { ...around, key, readOnly }), (item) => item.update());
  }
}

async function showOld(page, envelope, newest, around) {
  const { date, place, notes } = envelope.content;
  page.title(`${envelope.title}, revision ${envelope.revision}`);
  PageHead(page.leaf, { kicker: 'Set', title: envelope.title, lead: [longDay(date), place].filter(Boolean).join(', ') });
  OldRevision(page.leaf, { envelope, newest });
  if (notes) page.leaf.append(el('p', { class: 'written' }, notes));
  drawItems(page.leaf, { content: envelope.content }, around, true);
  const sheet = el('section');
  page.leaf.append(sheet);
  const set = { ...envelope.content, title: `${envelope.title}, revision ${envelope.revision}` };
  drawStage(sheet, set, around, await readSounds(set, around).catch(() => new Map()));
  const changes = el('div');
  fill(page.margin, el('h2', {}, 'What has changed since'), changes);
  ChangeList(changes, (await get(`/api/setlists/${envelope.id}/compare`, { was: envelope.revision, now: newest })).changes);
}

function missing({ title, date }) {
  if (!title?.trim()) return 'Give the set a name first.';
  return date ? null : 'A set has a date.';
}
