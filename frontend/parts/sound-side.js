/**
 * sound-side.js: what the wiring does to each open string, and which would gain from a preamp.
 *
 *   const sound = SoundSide(element, { bench });
 *   sound.show(sheet.strings);
 */
import { el, fill } from '../dom.js';
import { number } from '../words-rules.js';
import { Fact } from './editable.js';
import { StringBoard } from './string-board.js';

/** @param {HTMLElement} element @param {{ bench: import('../bench-keeping.js').BenchKeeping }} state */
export function SoundSide(element, { bench }) {
  const facts = el('dl', { class: 'facts' });
  const place = el('div');
  const sentences = el('ul', { class: 'pencil' });
  const board = StringBoard(place, { label: 'What the wiring takes from each string' });
  const pickup = () => bench.instrument.content.pickup ?? {};
  const editPickup = (field) => (value) => bench.instrument.change((content) => {
    content.pickup ??= {};
    content.pickup[field] = value ?? undefined;
  });
  const shown = [
    fact({ label: 'One string’s element', kind: 'number', unit: 'pF', min: 1, max: 1e6, empty: 'capacitance not known' }, () => pickup().capacitancePicofarads, editPickup('capacitancePicofarads')),
    fact({ label: 'Cable to the first resistance', kind: 'number', unit: 'm', min: 0, max: 100, empty: 'length not known: taken for none' }, () => pickup().cableMetres, editPickup('cableMetres')),
    fact({ label: 'That cable', kind: 'number', unit: 'pF per metre', min: 10, max: 1000, empty: 'not known: taken for 100 pF per metre' }, () => pickup().cablePicofaradsPerMetre, editPickup('cablePicofaradsPerMetre')),
    fact({ label: 'The synth’s string input', kind: 'number', unit: 'Ω', min: 1, max: 1e12, empty: 'not known: taken for 1 MΩ' }, () => bench.synth.content.inputOhms, (value) => bench.synth.change((content) => { content.inputOhms = value ?? undefined; })),
  ];
  element.classList.add('sound-side');
  fill(element, facts, place, sentences, el('p', { class: 'help' }, 'A piezo element is a small capacitance: with the resistance it meets it loses its lowest tones (below 1 / 2πRC), and a cable takes level from all of them. More than 3 dB on an open string is worth a preamp close to the pickup.'));
  return { element, show };

  function fact(state, read, onEdit) {
    const part = Fact(facts, { ...state, value: read() ?? null, onEdit });
    return () => part.show({ value: read() ?? null });
  }

  /** @param {any[]} strings outlooks; empty while the pickup is not known */
  function show(strings) {
    for (const update of shown) update();
    board.clear();
    place.hidden = strings.length === 0;
    for (const { string, openNote, cornerHertz, cornerDecibels, cableDecibels, wantsPreamp } of strings) {
      board.row(String(string), openNote, [
        el('span', { class: 'loss' }, rounded(cornerDecibels + cableDecibels), el('span', { class: 'unit' }, 'dB'),
          el('span', { class: 'corner' }, `corner ${number(Number(cornerHertz.toPrecision(3)))} Hz`)),
      ], [el('span', { class: wantsPreamp ? 'changed' : '' }, wantsPreamp ? 'gains from a preamp' : 'straight is fine')]);
    }
    fill(sentences, strings.map(({ sentence }) => el('li', {}, sentence)));
  }
}

function rounded(decibels) {
  const amount = Math.round(decibels * 10) / 10;
  return amount === 0 ? '0' : number(amount);
}
