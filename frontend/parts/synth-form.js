/**
 * synth-form.js: a synth: how many strings it hears, its scale for sensitivity, its memory, its socket, its control lines
 * and its own words for what can be set.
 *
 *   SynthForm(leaf, { keeping, shapes });
 */
import { el } from '../dom.js';
import { counted } from '../words-rules.js';
import { ConnectorEditor } from './connector-editor.js';
import { ControlLinesEditor } from './control-lines-editor.js';
import { Fact } from './editable.js';
import { Fold } from './fold.js';
import { VocabularyEditor } from './vocabulary-editor.js';

/** @param {HTMLElement} leaf @param {{ keeping: import('../save.js').Keeping, shapes: any[] }} state */
export function SynthForm(leaf, { keeping, shapes }) {
  const { content } = keeping;
  const needed = (value) => (value === null ? 'A number is needed.' : null);
  const basics = el('div', { class: 'basics' });
  leaf.append(basics);
  const shows = [drawScale(), drawMemory()];
  const vocabulary = VocabularyEditor(Fold(leaf, { title: 'What can be set', note: parameterCount(content.vocabulary) }), { keeping });
  const pins = Object.keys(content.connector?.pins ?? {}).length;
  const connector = ConnectorEditor(Fold(leaf, { title: 'Its socket', note: pins ? counted(pins, 'pin') : 'not described yet' }), { keeping, shapes, lines: () => Object.keys(keeping.content.controlLines ?? {}) });
  const lineCount = Object.keys(content.controlLines ?? {}).length;
  const lines = ControlLinesEditor(Fold(leaf, { title: 'Control lines', note: lineCount ? String(lineCount) : 'none written' }), { keeping });
  const showRest = drawRest();
  keeping.onChange(() => {
    for (const show of shows) show();
    vocabulary.update();
    connector.update();
    lines.update();
    showRest();
  });

  function facts(place) {
    const list = el('dl', { class: 'facts' });
    place.append(list);
    return (state, read, write) => {
      const fact = Fact(list, { ...state, value: read(keeping.content), onEdit: (value) => keeping.change((next) => write(next, value)) });
      return () => fact.show({ value: read(keeping.content) });
    };
  }

  function drawScale() {
    const section = el('section', {}, el('h2', {}, 'Sensitivity'));
    basics.append(section);
    const fact = facts(section);
    const scale = (field, label, more = {}) => fact({ label, kind: 'number', ...more },
      (next) => next.sensitivityScale[field] ?? null,
      (next, value) => { next.sensitivityScale[field] = value ?? undefined; });
    const all = [
      fact({ label: 'Inputs', kind: 'number', min: 1, max: 16, check: needed, help: 'how many strings it can hear' }, (next) => next.inputs, (next, value) => { next.inputs = Math.round(value); }),
      scale('min', 'Scale from', { check: needed }),
      scale('max', 'to', { check: needed }),
      scale('step', 'Step', { check: (value) => (value !== null && value > 0 ? null : 'A step above 0 is needed.') }),
      scale('customaryStart', 'Players start at', { empty: 'not known' }),
      scale('decibelsPerStep', 'One step is', { unit: 'dB', min: -20, max: 20, empty: 'not measured' }),
    ];
    return () => all.forEach((show) => show());
  }

  function drawMemory() {
    const section = el('section', { class: 'memory' }, el('h2', {}, 'Memory slots'));
    basics.append(section);
    const fact = facts(section);
    // While one of the numbers is being typed there is none, and the others stay what they were.
    let whole = { prefix: '', first: 1, last: 99 };
    const slot = (field, state) => fact(state, (next) => next.memorySlots?.[field] ?? (field === 'prefix' ? '' : null), (next, value) => {
      whole = next.memorySlots ?? whole;
      const slots = { ...whole, [field]: value ?? undefined };
      next.memorySlots = slots.first === undefined || slots.last === undefined ? undefined : slots;
    });
    const all = [
      slot('prefix', { label: 'Letters', maxLength: 10, empty: 'none' }),
      slot('first', { label: 'First', kind: 'number', min: 0, max: 99_999, empty: 'no slots' }),
      slot('last', { label: 'Last', kind: 'number', min: 0, max: 99_999, empty: 'no slots' }),
    ];
    return () => all.forEach((show) => show());
  }

  function drawRest() {
    const fact = facts(Fold(leaf, { title: 'Supply and notes' }));
    const all = [
      fact({ label: 'Supply can give', kind: 'number', unit: 'mA', min: 0.001, max: 10_000, empty: 'not known', help: 'in all, from its documentation; leave it open rather than guess' }, (next) => next.supplyMilliamps ?? null, (next, value) => { next.supplyMilliamps = value ?? undefined; }),
      fact({ label: 'Notes', kind: 'long', empty: 'add' }, (next) => next.notes ?? '', (next, value) => { next.notes = value; }),
    ];
    return () => all.forEach((show) => show());
  }
}

/** A new synth: six inputs, a plain scale, and the words nearly every synth knows. */
export function blankSynth() {
  const level = { type: 'range', label: 'Level', order: 1, min: 0, max: 100, step: 1, unit: '%' };
  return {
    title: '',
    inputs: 6,
    controlLines: {},
    sensitivityScale: { min: 0, max: 100, step: 1 },
    vocabulary: { straight: { level }, voice: { level: { ...level } }, effects: {} },
    notes: '',
  };
}

function parameterCount({ straight = {}, voice = {}, effects = {} } = {}) {
  const count = Object.keys(straight).length + Object.keys(voice).length + Object.values(effects).reduce((sum, effect) => sum + Object.keys(effect.parameters).length, 0);
  return count ? counted(count, 'word') : 'nothing yet';
}
