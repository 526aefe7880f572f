/**
 * level-intake.js: how a measurement gets in: a recording, a take, or a meter's readings; and what is known beforehand.
 *
 *   LevelIntake(element, { rig: id, strings: ['1', …], notes: { 1: 'E5' }, inputs: 4, onFiles: (files) => {}, onReadings: (body) => {} })
 *     → { query() }   // what is known of mains, margin and the scale, for the request
 *
 * What was typed of a meter's readings stays on this device until it is thrown away, for each rig by itself.
 */
import { el, fill } from '../dom.js';
import { keepReadings, keptReadings } from '../drafts.js';
import { LOUDNESSES } from '../level-rules.js';
import { listed, noteName, parseNumber } from '../words-rules.js';
import { SureButton } from './sure-button.js';

/** @param {HTMLElement} element @param {{ rig: string, strings: string[], notes: Record<string, string>, inputs: number, onFiles: (files: File[]) => void, onReadings: (body: any) => void }} state */
export function LevelIntake(element, { rig, strings, notes, inputs, onFiles, onReadings }) {
  const file = el('input', { type: 'file', multiple: true, accept: '.wav,.wave,.mid,.midi,audio/wav,audio/midi', class: 'unseen', id: 'level-file', on: { change: () => give([...file.files]) } });
  const drop = el('label', { class: 'drop', for: 'level-file' },
    el('strong', {}, 'Choose a recording'), el('span', {}, 'or drop it here: one WAV with a channel per input, several mono files, or a MIDI take'));
  const mains = el('select', {}, [['', 'whichever is heard more'], ['50', '50 Hz'], ['60', '60 Hz']].map(([value, words]) => el('option', { value }, words)));
  const margin = field({ value: '3', inputmode: 'decimal' });
  const steps = field({ placeholder: 'such as 10: −44, 20: −38' });
  const threshold = field({ inputmode: 'decimal', placeholder: 'not known' });
  element.classList.add('level-intake');
  fill(element, file, drop,
    el('details', { class: 'how' }, el('summary', {}, 'How to record'), el('ol', { class: 'steps' },
      ['Turn the amplifier and the synth down. Put the recorder or interface between the bridge and the synth, one channel per string.',
        'Leave two seconds of quiet: damp all strings, touch nothing. The noise and the hum are measured there.',
        'Bow each open string soft, medium and loud, string 1 first, about a second each, with a short pause between the strokes. Keep clear of full scale.',
        'Save it as WAV, 16, 24 or 32 bit. Mono files work too: one per input, started together; or one per string and loudness, named like 1-soft.wav.'].map((words) => el('li', {}, words)))),
    el('details', { class: 'known' }, el('summary', {}, 'What you know beforehand'),
      label('Mains', mains),
      label('Room to keep on either side of a trigger window', margin, 'In decibels; 3 is customary.'),
      label('The synth’s scale, measured', steps, 'The same stroke at two or more settings: the setting, a colon, the level in dB the synth then shows. Without it the decibels per step are assumed.'),
      label('The level that just triggers at the usual start', threshold, 'In the recording’s own dB. Without it the usual start is taken to suit the middle one of the strings.')),
    meter());
  for (const name of ['dragover', 'drop']) {
    drop.addEventListener(name, (event) => {
      event.preventDefault();
      if (name === 'drop') give([...event.dataTransfer.files]);
    });
  }
  return { query };

  function give(files) {
    if (files.length) onFiles(files);
    file.value = '';
  }

  function query() {
    const known = { mains: mains.value, margin: plain(margin.value), threshold: plain(threshold.value), steps: pairs(steps.value) };
    return Object.fromEntries(Object.entries(known).filter(([, value]) => value !== ''));
  }

  function meter() {
    const cells = [];
    const noise = Array.from({ length: inputs }, (unused, input) => field({ inputmode: 'decimal', 'aria-label': `Noise on input ${input + 1}` }));
    const unit = field({ inputmode: 'decimal', placeholder: 'they are decibels', 'aria-label': 'What one unit of the meter is worth' });
    const told = el('p', { class: 'unsafe', role: 'status' });
    const rows = strings.flatMap((string) => LOUDNESSES.map((loudness) => el('tr', {},
      el('th', { scope: 'row' }, `${string} ${noteName(notes[string])}, ${loudness}`),
      Array.from({ length: inputs }, (unused, index) => {
        const cell = field({ inputmode: 'decimal', 'aria-label': `String ${string} ${loudness}, input ${index + 1}` });
        cells.push({ cell, string: Number(string), loudness, input: index + 1 });
        return el('td', {}, cell);
      }))));
    const all = [...cells.map(({ cell }) => cell), ...noise, unit];
    const filled = (some) => some.filter(({ value }) => value.trim());
    const kept = keptReadings(rig);
    for (const each of all) {
      each.value = kept[nameOf(each)] ?? '';
      each.addEventListener('input', () => {
        each.removeAttribute('aria-invalid');
        keepReadings(rig, Object.fromEntries(filled(all).map((cell) => [nameOf(cell), cell.value])));
      });
    }
    const element = el('details', { class: 'meter', open: filled(all).length > 0 }, el('summary', {}, 'Type a meter’s readings instead'),
      el('p', { class: 'help' }, 'What the meter of every input shows while a string is bowed. Leave out what you did not read; the noise of all damped strings counts when it is read on every input.'),
      el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Meter readings' }, el('table', {},
        el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'String bowed'), noise.map((unused, index) => el('th', { scope: 'col' }, `Input ${index + 1}`)))),
        el('tbody', {}, rows, el('tr', {}, el('th', { scope: 'row' }, 'all damped'), noise.map((cell) => el('td', {}, cell)))))),
      label('What one unit of the meter is worth', unit, 'In decibels, if the meter has a scale of its own.'),
      el('div', { class: 'buttons' },
        el('button', { type: 'button', on: { click: work } }, 'Work from these readings'),
        SureButton({ word: 'Throw the readings away', question: 'Really throw them away?', trouble: told, act: empty })),
      told);
    return element;

    /** What cannot be read is never left out silently: the advice would stand on other readings than those on the page. */
    function work() {
      const odd = filled(all).filter(({ value }) => parseNumber(value) === null);
      for (const each of odd) each.setAttribute('aria-invalid', 'true');
      if (odd.length) {
        told.textContent = `Write a number, such as −20.5, or nothing: ${listed(odd.map((cell) => `“${cell.value.trim()}” for ${nameOf(cell)}`))}.`;
        odd[0].focus();
        return;
      }
      told.textContent = filled(noise).length % inputs ? 'Worked out without the noise: it is not read on every input.' : '';
      onReadings(readings(cells, noise, unit));
    }

    async function empty() {
      keepReadings(rig, {});
      const next = meter();
      element.replaceWith(next);
      next.querySelector('summary').focus();
    }
  }
}

function nameOf(cell) {
  return cell.getAttribute('aria-label');
}

function readings(cells, noise, unit) {
  const body = {
    readings: cells.map(({ cell, ...place }) => ({ ...place, decibels: parseNumber(cell.value) })).filter(({ decibels }) => decibels !== null),
  };
  const quiet = noise.map((cell) => parseNumber(cell.value));
  if (quiet.every((each) => each !== null)) body.noise = quiet;
  const worth = parseNumber(unit.value);
  if (worth !== null) body.decibelsPerUnit = worth;
  return body;
}

function plain(typed) {
  return typed.trim().replace('−', '-').replace(',', '.');
}

function pairs(typed) {
  return typed.replaceAll('−', '-').replaceAll(' ', '');
}

function field(attributes) {
  return el('input', { autocomplete: 'off', ...attributes });
}

function label(words, input, help) {
  return el('label', { class: 'field' }, el('span', { class: 'label' }, words), input, help ? el('span', { class: 'help' }, help) : null);
}
