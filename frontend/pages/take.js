/** take.js: one take on the bench: its roll, its faults, what to try, the figures behind it, and the ways out. */
import { allSheets, get, post, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { ChangeList } from '../parts/change-list.js';
import { Fact } from '../parts/editable.js';
import { FaultList } from '../parts/fault-list.js';
import { faultMark } from '../parts/fault-mark.js';
import { Fold } from '../parts/fold.js';
import { editableTitle } from '../parts/gear-page.js';
import { HistoryList } from '../parts/history-list.js';
import { NotRead } from '../parts/not-read.js';
import { OldRevision } from '../parts/old-revision.js';
import { PageHead } from '../parts/page-head.js';
import { PianoRoll } from '../parts/piano-roll.js';
import { SaveBar } from '../parts/save-bar.js';
import { TakePlayer } from '../parts/take-player.js';
import { TakeScore } from '../parts/take-score.js';
import { ThresholdBoard } from '../parts/threshold-board.js';
import { sheetAddress } from '../places-rules.js';
import { openSheet } from '../save.js';
import { fileAddress } from '../tab-notebook.js';
import { countKinds } from '../take-rules.js';
import { parseNumber, shortDay } from '../words-rules.js';

const PATIENCE_MILLIS = 120;
/** Quarters a minute that sheet music can have. */
const TEMPO = { min: 20, max: 400 };

export async function show(page, { params: { id }, query }) {
  const keeping = await openSheet('takes', id);
  const old = Number(query.get('revision')) || 0;
  if (old && old !== keeping.envelope?.revision) {
    await showOld(page, id, old, keeping.envelope?.revision);
    return;
  }
  const [{ items: thresholds }, rigs] = await Promise.all([get('/api/bench/takes/thresholds'), allSheets('rigs')]);
  let report = null;
  let waiting = 0;
  let asked = 0;
  page.title(keeping.content.title);
  page.twoColumns();
  let led = leadKey();
  const head = PageHead(page.leaf, { kicker: 'Take', title: editableTitle(keeping) });
  await drawLead();
  const score = TakeScore(section());
  const legend = el('ul', { class: 'roll-legend', 'aria-label': 'What the shapes mean' });
  const roll = PianoRoll(section(), { onSelect: choose, onRefuse: refuse, onSeek: (seconds) => player.seek(seconds) });
  page.leaf.querySelector('.piano-roll').before(legend);
  const player = TakePlayer(section(), { roll });
  const faults = el('div');
  section().append(el('h2', {}, 'Faults'), faults);
  const list = FaultList(faults, { onSelect: (fault) => { roll.select(fault); list.select(fault); }, onRefuse: refuse });
  const figures = el('div');
  const trouble = el('div');
  Fold(page.leaf, { title: 'The figures behind it' }).append(figures);
  const board = ThresholdBoard(figures, { thresholds, onMove: move });
  drawExports();
  drawFacts();
  page.leaf.append(trouble);
  SaveBar(page.leaf, keeping, { askWhy: true, onSaved: drawMargin });
  const advice = el('section');
  drawMargin();
  let judged = judgement();
  keeping.onChange(() => {
    if (led !== leadKey()) drawLead();
    if (judged === judgement()) return;
    judged = judgement();
    soon();
  });
  await ask();

  /** What the findings depend on: only a change there needs new ones. */
  function judgement() {
    const { midi, strings, layout, thresholds: moved, refused, exercise } = keeping.content;
    return JSON.stringify([midi, strings, layout, moved, refused, exercise]);
  }

  function soon() {
    clearTimeout(waiting);
    waiting = setTimeout(ask, PATIENCE_MILLIS);
  }

  async function ask() {
    const number = ++asked;
    try {
      const next = await post('/api/bench/takes', { content: keeping.content });
      // Of several answers under way only the newest counts.
      if (number !== asked) return;
      report = next;
      fill(trouble);
      draw();
    } catch (failure) {
      if (number === asked) NotRead(trouble, failure, ask);
    }
  }

  function draw() {
    fill(legend,
      el('li', {}, el('span', { class: 'bar' }), 'as it came'), el('li', {}, el('span', { class: 'bar after' }), 'mended'),
      Object.keys(countKinds(report.faults)).map((kind) => el('li', {}, faultMark(kind), kind)));
    score.show(report);
    roll.show(report);
    player.show(report);
    list.show(report);
    board.show(keeping.content.thresholds ?? {});
    drawAdvice();
  }

  function choose(fault) {
    list.select(fault);
  }

  function refuse(fault) {
    keeping.change((content) => {
      const refused = { ...content.refused };
      if (fault in refused) delete refused[fault];
      else refused[fault] = '';
      content.refused = refused;
    });
  }

  function move(name, figure) {
    keeping.change((content) => {
      const moved = { ...content.thresholds };
      if (figure === undefined) delete moved[name];
      else moved[name] = figure;
      content.thresholds = moved;
    });
    board.show(keeping.content.thresholds);
  }

  function leadKey() {
    return JSON.stringify([keeping.content.rig, keeping.content.date]);
  }

  async function drawLead() {
    const drawn = leadKey();
    led = drawn;
    let words;
    try {
      words = await leadWords();
    } catch {
      // The facts below name the rig as well.
      words = shortDay(keeping.content.date);
    }
    if (drawn === led) head.show({ lead: el('span', {}, words) });
  }

  async function leadWords() {
    const { rig, date } = keeping.content;
    if (!rig) return shortDay(date);
    const played = await readSheet('rigs', rig.id, rig.revision);
    return [date ? `${shortDay(date)}, on ` : 'On ', el('a', { href: sheetAddress('rigs', rig.id, rig.revision) }, played.title), ` as of revision ${rig.revision}`];
  }

  function drawAdvice() {
    fill(advice, el('h2', {}, 'What to try'),
      report.advice.length ? report.advice.map((sentence) => el('p', {}, sentence)) : el('p', { class: 'pencil' }, 'Nothing stands out enough to suggest a change.'),
      report.remarks.map((remark) => el('p', { class: 'pencil small' }, remark)));
  }

  function drawExports() {
    const base = `/api/takes/${id}`;
    const door = (href, word) => el('a', { class: 'button', href: fileAddress(base + href), download: '' }, word);
    const tempo = el('input', { id: 'export-tempo', inputmode: 'decimal', placeholder: 'estimated', maxlength: 5 });
    const grid = el('select', { id: 'export-grid' }, [[4, 'sixteenths'], [2, 'eighths'], [1, 'quarters'], [8, 'thirty-seconds']].map(([value, word]) => el('option', { value }, word)));
    const voices = el('input', { type: 'checkbox' });
    const sheet = door('/clean.musicxml', 'Sheet music (MusicXML)');
    const objection = el('p', { class: 'unsafe', role: 'status' });
    const link = () => {
      const query = new URLSearchParams({ grid: grid.value, voices: String(voices.checked) });
      const bpm = parseNumber(tempo.value);
      const isNone = tempo.value.trim() !== '' && !(bpm >= TEMPO.min && bpm <= TEMPO.max);
      objection.textContent = isNone ? `Write the quarters a minute as a number from ${TEMPO.min} to ${TEMPO.max}, such as 96, or nothing: then the tempo is estimated.` : '';
      tempo.setAttribute('aria-invalid', String(isNone));
      sheet.hidden = isNone;
      if (bpm && !isNone) query.set('tempo', String(bpm));
      sheet.href = fileAddress(`${base}/clean.musicxml?${query}`);
    };
    for (const field of [tempo, grid, voices]) field.addEventListener('input', link);
    link();
    const unsaved = el('p', { class: 'help', role: 'status' });
    const tell = () => { unsaved.textContent = keeping.isDirty ? 'Files are made from what is saved: save first, to have your latest choices in them.' : ''; };
    keeping.onChange(tell);
    tell();
    Fold(page.leaf, { title: 'Take it along' }).append(
      el('div', { class: 'buttons' }, door('/clean.mid?glide=bend', 'Mended, slides bent (MIDI)'), door('/clean.mid?glide=plain', 'Mended, slides as two notes (MIDI)'), door('/original.mid', 'As it came (MIDI)')),
      el('div', { class: 'sheet-music' },
        el('label', { for: 'export-tempo' }, 'Quarters a minute ', tempo), el('label', { for: 'export-grid' }, 'Shortest note ', grid),
        el('label', { class: 'tick' }, voices, 'each string a voice of its own')),
      objection,
      el('div', { class: 'buttons' }, sheet, door('/notes.csv', 'Notes (CSV)'), door('/faults.csv', 'Faults (CSV)')),
      unsaved);
  }

  function drawFacts() {
    const facts = el('dl', { class: 'facts' });
    section().append(el('h2', {}, 'About it'), facts);
    const date = Fact(facts, { label: 'Played on', kind: 'date', value: keeping.content.date ?? '', empty: 'no day noted', onEdit: (day) => keeping.change((content) => { content.date = day || undefined; }) });
    const rig = Fact(facts, { label: 'Rig', kind: 'choice', ...rigState(), onEdit: (chosen) => keeping.change((content) => {
      const [rigId, revision] = chosen.split('@');
      content.rig = rigId ? { id: rigId, revision: Number(revision) } : undefined;
    }) });
    const notes = Fact(facts, { label: 'Notes', kind: 'long', value: keeping.content.notes ?? '', empty: 'add a note', onEdit: (words) => keeping.change((content) => { content.notes = words; }) });
    keeping.onChange(() => {
      date.show({ value: keeping.content.date ?? '' });
      rig.show(rigState());
      notes.show({ value: keeping.content.notes ?? '' });
    });
  }

  function rigState() {
    const { rig } = keeping.content;
    const choices = [['', 'not noted'], ...rigs.map((each) => [`${each.id}@${each.revision}`, `${each.title}, revision ${each.revision}`])];
    const value = rig ? `${rig.id}@${rig.revision}` : '';
    if (rig && !choices.some(([each]) => each === value)) {
      choices.splice(1, 0, [value, `${rigs.find((each) => each.id === rig.id)?.title ?? 'Rig'}, revision ${rig.revision}`]);
    }
    return { value, choices };
  }

  function drawMargin() {
    const history = el('div', { class: 'no-print' });
    fill(page.margin, advice, el('div', { class: 'no-print' }, el('h2', {}, 'History'), history));
    if (keeping.envelope) HistoryList(history, { kind: 'takes', id, current: keeping.envelope.revision });
  }

  function section() {
    const element = el('section');
    page.leaf.append(element);
    return element;
  }
}

/** How the take stood then, and what has changed since. */
async function showOld(page, id, revision, newest) {
  const [envelope, report, { changes }] = await Promise.all([
    readSheet('takes', id, revision),
    get(`/api/takes/${id}/report`, { revision }),
    get(`/api/takes/${id}/compare`, { was: revision, now: newest }),
  ]);
  page.title(`${envelope.title}, revision ${revision}`);
  PageHead(page.leaf, { kicker: 'Take', title: envelope.title });
  OldRevision(page.leaf, { envelope, newest });
  const score = el('section');
  const since = el('div');
  page.leaf.append(score, el('h2', {}, 'What has changed since'), since);
  TakeScore(score).show(report);
  ChangeList(since, changes);
}
