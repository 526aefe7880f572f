/**
 * log-rehearsal.js: after a rehearsal, by thumb, in under a minute: the last rig is open as a copy, the strings are stepped,
 * a sentence and how it felt are added, and one save writes the rig's new revision and the log entry that points at it.
 */
import { allSheets, get, readSheet, saveSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { same } from '../drafts-rules.js';
import { findRehearsal, playerName } from '../drafts.js';
import { ChangeList } from '../parts/change-list.js';
import { Editable } from '../parts/editable.js';
import { Felt } from '../parts/felt.js';
import { opensFirst } from '../parts/menu-select.js';
import { NotRead } from '../parts/not-read.js';
import { PageHead } from '../parts/page-head.js';
import { SaveBar } from '../parts/save-bar.js';
import { Stepper } from '../parts/stepper.js';
import { StringBoard } from '../parts/string-board.js';
import { compareAddress, sheetAddress } from '../places-rules.js';
import { assignmentOf, stringNumbers } from '../rig-rules.js';
import { openSheet } from '../save.js';
import { asSentence, localDay, longDay, number, signed } from '../words-rules.js';
import { EVENTS, blankEntry, sensitivityStep } from './log-rehearsal-rules.js';

const TRIM_SCALE = { min: -60, max: 60, step: 0.5, customaryStart: 0 };

export async function show(page, { query }) {
  page.title('Log a rehearsal');
  const rigs = await allSheets('rigs', { limit: 50 }, 50);
  const id = query.get('rig') ?? findRehearsal()?.id ?? rigs[0]?.id;
  if (!id) {
    drawWithoutRig(page);
    return;
  }
  const keeping = await openSheet('rigs', id);
  if (!rigs.some((rig) => rig.id === id)) rigs.push({ id, title: keeping.content.title });
  const before = structuredClone(keeping.base);
  const [instrument, synth] = await Promise.all([
    readSheet('instruments', keeping.content.instrument.id, keeping.content.instrument.revision),
    readSheet('synths', keeping.content.synth.id, keeping.content.synth.revision),
  ]);
  const today = localDay(new Date());
  const strings = stringNumbers(instrument.content);
  /** The entry that was written while more was typed: the rest belongs to it. */
  let entryId = null;
  page.leaf.classList.add('log-rehearsal');
  PageHead(page.leaf, { title: 'After the rehearsal', lead: el('span', {}, longDay(today)) });
  drawRigChoice();
  const shows = [drawStrings(), drawFelt(), drawText(), drawTrims()];
  SaveBar(page.leaf, keeping, { saveWord: 'Write it down', onSaved: saved, confirm: writeRest, showsLog: true });
  keeping.onChange(() => shows.forEach((each) => each()));

  function entry() {
    return keeping.extra.log ?? keeping.savedExtra.log ?? blankEntry(today);
  }

  /** Whatever is touched first makes this today's rig and starts the log entry. */
  function edit(change) {
    keeping.extra.log ??= structuredClone(entry());
    keeping.change((content) => {
      change(content);
      content.date = keeping.extra.log.date;
    });
  }

  function drawRigChoice() {
    page.leaf.append(rigs.length < 2
      ? el('p', { class: 'which-rig' }, keeping.content.title)
      : el('label', { class: 'which-rig' }, el('span', { class: 'unseen' }, 'Rig'), el('select', {
        on: { change: (event) => location.replace(`/new/log?rig=${event.target.value}`) },
      }, rigs.map((rig) => el('option', { value: rig.id, selected: rig.id === id }, rig.title)))));
    const choice = page.leaf.querySelector('.which-rig select');
    if (choice) opensFirst(choice);
  }

  function drawStrings() {
    const place = el('div');
    const board = StringBoard(place, { label: 'Sensitivity per string' });
    page.leaf.append(place);
    const rows = strings.map((string) => {
      const stepper = Stepper(el('span'), {
        label: `Sensitivity of string ${string}`, value: null, scale: synth.content.sensitivityScale,
        onStep: (value) => edit((content) => { assignmentOf(content, string).sensitivity = value ?? undefined; }),
      });
      const step = el('span', { class: 'step' });
      board.row(string, instrument.content.strings[string].note, [stepper.element], [step]);
      return () => {
        stepper.show({ value: keeping.content.assignments?.[string]?.sensitivity ?? null });
        fill(step, stepWords(sensitivityStep(before, keeping.content, string)));
      };
    });
    const update = () => rows.forEach((row) => row());
    update();
    return update;
  }

  function drawFelt() {
    const place = el('div');
    page.leaf.append(place);
    const felt = Felt(place, { value: entry().felt, onChoose: (value) => edit(() => { keeping.extra.log.felt = value; }) });
    return () => felt.show({ value: entry().felt });
  }

  function drawText() {
    const area = el('textarea', { rows: 2, placeholder: 'What happened? A sentence will do.', 'aria-label': 'What happened', maxlength: 20_000 });
    area.value = entry().text;
    area.addEventListener('input', () => edit(() => { keeping.extra.log.text = area.value; }));
    const facts = el('div', { class: 'occasion' });
    const event = Editable(el('span'), { label: 'Occasion', kind: 'choice', choices: EVENTS, value: entry().event, onEdit: (value) => edit(() => { keeping.extra.log.event = value; }) });
    const date = Editable(el('span'), { label: 'Day', kind: 'date', value: entry().date,
      check: (value) => (value ? null : 'A log entry needs a day.'),
      onEdit: (value) => edit(() => { keeping.extra.log.date = value; }) });
    facts.append(event.element, date.element);
    page.leaf.append(area, facts);
    return () => {
      if (document.activeElement !== area) area.value = entry().text;
      event.show({ value: entry().event });
      date.show({ value: entry().date });
    };
  }

  function drawTrims() {
    const place = el('div');
    place.classList.add('small');
    const board = StringBoard(place, { label: 'Trim per string' });
    const rows = strings.map((string) => {
      const trim = Stepper(el('span', { class: 'small' }), {
        label: `Trim of string ${string}`, value: 0, unit: 'dB', scale: TRIM_SCALE,
        onStep: (value) => edit((content) => { assignmentOf(content, string).trimDecibels = value ?? 0; }),
      });
      board.row(string, instrument.content.strings[string].note, [], [trim.element]);
      return () => trim.show({ value: keeping.content.assignments?.[string]?.trimDecibels ?? 0 });
    });
    page.leaf.append(el('details', { class: 'trims' }, el('summary', {}, 'Trims and wiring'), place,
      el('p', { class: 'help' }, 'Inputs and wiring are changed on ', el('a', { href: sheetAddress('rigs', id) }, 'the rig’s own page'), '.')));
    const update = () => rows.forEach((row) => row());
    update();
    return update;
  }

  function saved(envelope) {
    entryId = envelope.extras?.logId ?? entryId;
    if (keeping.isDirty) page.say('Written down, but for what you typed meanwhile: write that down as well.');
    else written(envelope);
  }

  /** Before the rig is saved again. @returns {Promise<boolean>} whether there is anything left to save with it */
  async function writeRest() {
    const rest = structuredClone(keeping.extra.log);
    if (!entryId || !rest) return true;
    try {
      const { revision, content } = await readSheet('log', entryId);
      await saveSheet('log', entryId, revision, { content: { ...content, ...rest }, by: playerName() });
    } catch (failure) {
      page.say(asSentence(failure.message));
      return false;
    }
    keeping.savedExtra = { log: rest };
    if (same(keeping.extra.log, rest)) keeping.extra = {};
    keeping.touch();
    if (!keeping.isDirty) written(keeping.envelope);
    return keeping.isDirty;
  }

  async function written(envelope) {
    const was = before ? envelope.parent : null;
    const changes = el('div');
    page.title('Written down');
    const head = document.querySelector('.page-head');
    head.remove();
    fill(page.leaf);
    PageHead(page.leaf, { title: 'Written down', lead: `${envelope.title}, revision ${envelope.revision}` });
    fill(page.leaf,
      changes,
      el('div', { class: 'buttons' },
        el('a', { class: 'button inked', href: '/' }, 'To the first page'),
        el('a', { class: 'button', href: sheetAddress('rigs', id) }, 'The rig'),
        el('a', { class: 'button', href: entryId ? sheetAddress('log', entryId) : '/log' }, 'The log'),
        was ? el('a', { class: 'button quiet', href: compareAddress('rigs', id, was, envelope.revision) }, 'See the comparison') : null));
    document.getElementById('page').focus();
    if (was) await tellChanges(changes, was, envelope.revision);
  }

  async function tellChanges(changes, was, now) {
    try {
      const { changes: found } = await get(`/api/rigs/${id}/compare`, { was, now });
      ChangeList(changes, found, { none: 'The strings stayed as they were.' });
    } catch (failure) {
      NotRead(changes, failure, () => tellChanges(changes, was, now));
    }
  }
}

function stepWords(step) {
  if (!step) return null;
  const known = step.was !== undefined && step.now !== undefined;
  return [el('del', {}, step.was === undefined ? '–' : number(step.was)), ' → ', el('span', { class: 'changed' }, known ? signed(step.now - step.was) : 'new')];
}

function drawWithoutRig({ leaf }) {
  PageHead(leaf, { title: 'After the rehearsal' });
  leaf.append(
    el('p', {}, 'There is no rig to log yet. First say which instrument goes into which synth; it takes a few minutes, once.'),
    el('div', { class: 'buttons' }, el('a', { class: 'button inked', href: '/new/rigs' }, 'Write down the rig')));
}
