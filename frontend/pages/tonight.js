/** tonight.js: the first page: the next set, what changed since the last one, the rig, the newest log line. */
import { allSheets, get, postLong, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { changeWords } from '../parts/change-list.js';
import { feltMark } from '../parts/felt.js';
import { NotRead } from '../parts/not-read.js';
import { PageHead } from '../parts/page-head.js';
import { instead } from '../parts/reading-only.js';
import { StringBoard } from '../parts/string-board.js';
import { setlistComparisonAddress, sheetAddress } from '../places-rules.js';
import { asSentence, localDay, longDay, number, shortDay } from '../words-rules.js';
import { linesOf, sensitivityChange, when } from './tonight-rules.js';

export async function show(page) {
  page.title('Tonight');
  const [tonight, pieces, recipes] = await Promise.all([get('/api/tonight', { day: localDay(new Date()) }), titles('pieces'), titles('recipes')]);
  if (tonight.empty) {
    drawEmpty(page);
    return;
  }
  page.twoColumns();
  if (tonight.next) drawSet(page, tonight, pieces, recipes);
  else drawNoSet(page);
  await drawMargin(page.margin, tonight);
}

function drawEmpty({ leaf }) {
  PageHead(leaf, { title: 'A blank page' });
  const example = el('button', { type: 'button', on: { click: openExample } }, 'Open the example');
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  leaf.append(
    el('p', { class: 'opening' }, 'Write down how your strings are set and what each piece sounds like, and before every set you will know what has changed since the last.'),
    instead(),
    el('div', { class: 'buttons two-doors writes' },
      el('a', { class: 'button inked', href: '/new/instruments?path=start' }, 'Start my own'),
      example),
    trouble,
    el('p', { class: 'pencil small writes' }, 'The example is a season of a player who does not exist; everything in it can be tried.'));

  async function openExample() {
    example.disabled = true;
    example.textContent = 'Writing the season …';
    trouble.textContent = '';
    try {
      await postLong('/api/example');
      location.assign('/');
    } catch (failure) {
      example.disabled = false;
      example.textContent = 'Open the example';
      trouble.textContent = asSentence(failure.message);
    }
  }
}

function drawNoSet({ leaf }) {
  PageHead(leaf, { title: 'No set ahead', doors: [logDoor()] });
  leaf.append(
    el('p', {}, 'Write down the next set, and this page will show it with what has changed since the last one.'),
    el('div', { class: 'buttons' }, el('a', { class: 'button', href: '/new/setlists' }, 'Write a set')));
}

function drawSet({ leaf }, { next, previous, comparison }, pieces, recipes) {
  const set = next.content;
  const today = localDay(new Date());
  PageHead(leaf, {
    kicker: when(set.date, today),
    title: el('a', { class: 'plain', href: sheetAddress('setlists', next.id) }, next.title),
    lead: [longDay(set.date), set.place].filter(Boolean).join(', '),
    doors: [logDoor(), el('a', { class: 'button', href: `/stage/${next.id}` }, 'On stage')],
  });
  if (previous && comparison) {
    leaf.append(el('a', { class: 'since', href: setlistComparisonAddress({ id: previous.id }, { id: next.id }) },
      el('span', { class: 'pencil' }, `Since ${previous.title}, ${shortDay(previous.content.date)}`),
      el('span', { class: 'summary' }, comparison.summary || 'Nothing has changed'),
      el('span', { class: 'go no-print' }, 'See every change', el('span', { 'aria-hidden': 'true' }, '→'))));
  }
  leaf.append(el('ol', { class: 'programme ruled', 'aria-label': 'The pieces in order' },
    linesOf(set, comparison).map((line, index) => el('li', {}, el('a', { class: 'line', href: line.recipeId ? sheetAddress('recipes', line.recipeId) : sheetAddress('pieces', line.pieceId) },
      el('span', { class: 'position', 'aria-hidden': 'true' }, index + 1),
      el('span', { class: 'name' }, pieces.get(line.pieceId) ?? 'A piece that is no longer here'),
      line.news.length ? el('em', { class: 'news' }, line.news.join(', ')) : null,
      line.recipeId ? el('span', { class: 'aside' }, recipes.get(line.recipeId) ?? '') : null,
      line.note ? el('span', { class: 'note pencil' }, line.note) : null)))));
  drawLeftOut(leaf, comparison);
}

function drawLeftOut(leaf, comparison) {
  const dropped = (comparison?.pieces ?? []).filter((piece) => piece.change === 'dropped');
  if (dropped.length === 0) return;
  leaf.append(el('p', { class: 'left-out pencil' }, 'Left out this time: ', dropped.map((piece, index) => [
    index ? ', ' : null, el('a', { href: sheetAddress('pieces', piece.pieceId) }, piece.title)]), '.'));
}

async function drawMargin(margin, { next, rig, newestLog, comparison }) {
  const rigReference = next?.content.rig;
  const isOther = rigReference?.id && rigReference.id !== rig?.id;
  if (isOther || rig) {
    const place = el('section', { class: 'rig-tonight' });
    margin.append(place);
    await drawRig(place, () => (isOther ? readSheet('rigs', rigReference.id, rigReference.revision) : rig), comparison);
  }
  if (newestLog) {
    margin.append(el('section', { class: 'newest-log' },
      el('h2', {}, 'Last in the log'),
      el('p', { class: 'pencil' }, longDay(newestLog.content.date)),
      el('blockquote', {}, newestLog.content.text || newestLog.title),
      feltMark(newestLog.content.felt),
      el('p', {}, el('a', { href: sheetAddress('log', newestLog.id) }, 'Open the log'))));
  }
}

async function drawRig(section, read, comparison) {
  try {
    const rig = await read();
    const { id, revision } = rig.content.instrument;
    fillRig(section, rig, (await readSheet('instruments', id, revision)).content.strings, comparison);
  } catch (failure) {
    NotRead(section, failure, () => drawRig(section, read, comparison));
  }
}

function fillRig(section, rig, strings, comparison) {
  const { assignments } = rig.content;
  const place = el('div');
  place.classList.add('small');
  const board = StringBoard(place, { label: 'Sensitivity per string' });
  for (const string of Object.keys(strings).sort()) {
    const value = assignments[string]?.sensitivity;
    const change = sensitivityChange(comparison, rig.id, string);
    board.row(string, strings[string].note, [], [change
      ? changeWords(change, [])
      : el('span', { class: 'number' }, value === undefined ? '–' : number(value))]);
  }
  fill(section,
    el('h2', {}, el('a', { href: sheetAddress('rigs', rig.id) }, rig.title)),
    el('p', { class: 'pencil' }, 'Sensitivity per string'), place);
}

function logDoor() {
  return el('a', { class: 'button inked', href: '/new/log' }, 'Log a rehearsal');
}

async function titles(kind) {
  return new Map((await allSheets(kind)).map((sheet) => [sheet.id, sheet.title]));
}
