/**
 * rig-strings.js: the assignments of a rig as strings across the page: note, sensitivity, trim, and the input it ends in.
 *
 *   const strings = RigStrings(element, { keeping, instrument, synth });   // contents of instrument and synth
 *   strings.update();                                                       // after the content changed elsewhere
 */
import { el, fill } from '../dom.js';
import { assignmentOf, remarks, stringNumbers } from '../rig-rules.js';
import { number } from '../words-rules.js';
import { Editable } from './editable.js';
import { Stepper } from './stepper.js';
import { StringBoard } from './string-board.js';

const TRIM_SCALE = { min: -60, max: 60, step: 0.5, customaryStart: 0 };

/**
 * @param {HTMLElement} element
 * @param {{ keeping: { content: any, change?: (edit: (content: any) => void) => void }, instrument: any, synth: any, readOnly?: boolean }} state
 */
export function RigStrings(element, { keeping, instrument, synth, readOnly = false }) {
  const scale = synth.sensitivityScale;
  const place = el('div');
  const advice = el('ul', { class: 'remarks' });
  const rows = [];
  element.classList.add('rig-strings');
  fill(element,
    el('p', { class: 'columns', 'aria-hidden': 'true' }, el('span', {}, 'string'), el('span', {}, 'sensitivity'), el('span', { class: 'trim-column' }, 'trim'), el('span', {}, 'input')),
    place,
    advice,
    el('p', { class: 'help' }, `The scale runs from ${number(scale.min)} to ${number(scale.max)}${scale.customaryStart === undefined ? '' : `; players usually start at ${number(scale.customaryStart)}`}. Higher answers a softer stroke, and a neighbour's string sooner.`));
  const board = StringBoard(place, { label: 'Strings and where they go' });
  for (const string of stringNumbers(instrument)) rows.push(readOnly ? readRow(string) : writeRow(string));
  update();
  return { update };

  function readRow(string) {
    const { sensitivity, trimDecibels = 0, input } = keeping.content.assignments?.[string] ?? {};
    board.row(string, instrument.strings[string].note, [
      el('span', { class: 'number' }, sensitivity === undefined ? '–' : number(sensitivity)),
      el('span', { class: 'trim' }, number(trimDecibels), el('span', { class: 'unit' }, 'dB')),
    ], [el('span', {}, input === undefined ? 'none' : `input ${input}`)]);
    return () => {};
  }

  function writeRow(string) {
    const edit = (change) => keeping.change((content) => change(assignmentOf(content, string)));
    const current = () => keeping.content.assignments?.[string] ?? {};
    const sensitivity = Stepper(el('span'), {
      label: `Sensitivity of string ${string}`, value: current().sensitivity ?? null, scale,
      onStep: (value) => edit((assignment) => { assignment.sensitivity = value ?? undefined; }),
    });
    const trim = Editable(el('span', { class: 'trim' }), {
      label: `Trim of string ${string}`, kind: 'number', unit: 'dB', min: TRIM_SCALE.min, max: TRIM_SCALE.max, value: current().trimDecibels ?? 0,
      onEdit: (value) => edit((assignment) => { assignment.trimDecibels = value ?? 0; }),
    });
    const input = Editable(el('span', { class: 'goes-to' }), {
      label: `String ${string} goes to`, kind: 'choice', value: inputWord(current().input), empty: 'none',
      choices: [['', 'none'], ...Array.from({ length: synth.inputs }, (_, index) => [String(index + 1), `input ${index + 1}`])],
      onEdit: (value) => edit((assignment) => { assignment.input = value === '' ? undefined : Number(value); }),
    });
    board.row(string, instrument.strings[string].note, [sensitivity.element, trim.element], [input.element]);
    return () => {
      sensitivity.show({ value: current().sensitivity ?? null });
      trim.show({ value: current().trimDecibels ?? 0 });
      input.show({ value: inputWord(current().input) });
    };
  }

  function update() {
    for (const show of rows) show();
    fill(advice, remarks(keeping.content, instrument, synth).map((sentence) => el('li', {}, sentence)));
  }
}

function inputWord(input) {
  return input === undefined || input === null ? '' : String(input);
}
