/**
 * instrument-form.js: a bowed instrument: its open strings, its reference pitch, its socket, its pickup.
 *
 *   InstrumentForm(leaf, { keeping, shapes, isNew: false });
 */
import { el, fill } from '../dom.js';
import { TUNINGS, addString, hertz, midiOf, plainName, stringsOf } from '../tuning-rules.js';
import { counted, noteName } from '../words-rules.js';
import { ConnectorEditor } from './connector-editor.js';
import { Editable, Fact } from './editable.js';
import { Fold } from './fold.js';
import { Stepper } from './stepper.js';
import { StringBoard } from './string-board.js';

/** @param {HTMLElement} leaf @param {{ keeping: import('../save.js').Keeping, shapes: any[], isNew?: boolean }} state */
export function InstrumentForm(leaf, { keeping, shapes, isNew = false }) {
  const { content } = keeping;
  if (isNew) drawTunings();
  const updateStrings = drawStrings();
  const updatePitch = drawPitch();
  const pinCount = Object.keys(content.connector?.pins ?? {}).length;
  const connector = ConnectorEditor(Fold(leaf, { title: 'Its socket', note: pinCount ? counted(pinCount, 'pin') : 'not described yet' }), { keeping, shapes });
  const updatePickup = drawPickup();
  keeping.onChange(() => {
    updateStrings();
    updatePitch();
    connector.update();
    updatePickup();
  });

  function drawTunings() {
    leaf.append(el('div', { class: 'buttons tunings', role: 'group', 'aria-label': 'Start from a tuning' }, TUNINGS.map(([words, notes]) => el('button', {
      type: 'button', on: { click: () => keeping.change((next) => { next.strings = stringsOf(notes); }) },
    }, words))));
  }

  function drawStrings() {
    const place = el('div', { class: 'open-strings' });
    const more = el('button', { type: 'button', on: { click: () => keeping.change((next) => addString(next.strings)) } }, 'One string more');
    const fewer = el('button', { type: 'button', class: 'quiet', on: { click: () => keeping.change((next) => { delete next.strings[String(Object.keys(next.strings).length)]; }) } }, 'One fewer');
    leaf.append(el('section', {}, place, el('div', { class: 'buttons' }, more, fewer)));
    const board = StringBoard(place, { label: 'Open strings, highest first' });
    let rows = [];
    update();
    return update;

    function update() {
      const numbers = Object.keys(keeping.content.strings).sort();
      more.hidden = numbers.length >= 7;
      fewer.hidden = numbers.length <= 4;
      if (numbers.length !== rows.length) {
        board.clear();
        rows = numbers.map(row);
      }
      for (const show of rows) show();
    }

    function row(number) {
      const string = () => keeping.content.strings[number];
      const change = (edit) => keeping.change((next) => edit(next.strings[number]));
      const note = Editable(el('span'), {
        label: `Open note of string ${number}`, value: string().note, maxLength: 5, help: 'such as E5, Bb3, F#4',
        check: (value) => (midiOf(value) === null ? 'Write a note such as E5, Bb3 or F#4.' : null),
        onEdit: (value) => change((each) => { each.note = plainName(value); }),
      });
      const cents = Editable(el('span'), {
        label: `String ${number}, cents above its note`, kind: 'number', unit: 'cents', min: -100, max: 100, value: string().cents ?? 0,
        onEdit: (value) => change((each) => { each.cents = value ?? 0; }),
      });
      const sounds = el('output', { class: 'pencil' });
      board.row(number, note.element, [cents.element], [sounds]);
      return () => {
        note.show({ value: noteName(string().note) });
        cents.show({ value: string().cents ?? 0 });
        const frequency = hertz(midiOf(string().note), string().cents ?? 0, keeping.content.referencePitchHertz);
        fill(sounds, frequency.toFixed(1), el('span', { class: 'unit' }, 'Hz'));
      };
    }
  }

  function drawPitch() {
    const place = el('span');
    leaf.append(el('div', { class: 'reference' },
      el('span', {}, 'A4 is tuned to'), place,
      el('span', { class: 'help' }, 'Equal temperament from there; 440 Hz is the standard (ISO 16).')));
    const stepper = Stepper(place, {
      label: 'Reference pitch of A4', unit: 'Hz', value: keeping.content.referencePitchHertz, scale: { min: 380, max: 480, step: 1, customaryStart: 440 },
      onStep: (value) => keeping.change((next) => { next.referencePitchHertz = value ?? 440; }),
    });
    return () => stepper.show({ value: keeping.content.referencePitchHertz });
  }

  function drawPickup() {
    const body = Fold(leaf, { title: 'Pickup and notes' });
    const list = el('dl', { class: 'facts' });
    body.append(list);
    const pickup = (next) => (next.pickup ??= { notes: '' });
    const capacitance = Fact(list, { label: 'Capacitance per string', kind: 'number', unit: 'pF', min: 1, max: 1e6, value: null, empty: 'not measured', help: 'of one string’s element, from its data or a meter',
      onEdit: (value) => keeping.change((next) => { pickup(next).capacitancePicofarads = value ?? undefined; }) });
    const about = Fact(list, { label: 'About the pickup', kind: 'long', value: '', empty: 'add', onEdit: (value) => keeping.change((next) => { pickup(next).notes = value; }) });
    const notes = Fact(list, { label: 'Notes', kind: 'long', value: '', empty: 'add', onEdit: (value) => keeping.change((next) => { next.notes = value; }) });
    update();
    return update;

    function update() {
      capacitance.show({ value: keeping.content.pickup?.capacitancePicofarads ?? null });
      about.show({ value: keeping.content.pickup?.notes ?? '' });
      notes.show({ value: keeping.content.notes ?? '' });
    }
  }
}

/** A new instrument. */
export function blankInstrument() {
  return { title: '', strings: stringsOf(TUNINGS[0][1]), referencePitchHertz: 440, notes: '' };
}
