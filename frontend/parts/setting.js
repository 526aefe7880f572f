/**
 * setting.js: one value of a sound: what it is, where it comes from, and the way back to the starting point.
 *
 *   Setting(element, sound, { pointer: '/straight/parameters/level', parameter, label: 'Level' });
 *
 * `sound` is the sheet's settings as sound-editor.js describes them. Returns { element, update }.
 */
import { el, fill } from '../dom.js';
import { read, write } from '../save-rules.js';
import { parseFree, parseTime, settingWords, unusual } from '../setting-rules.js';
import { Editable } from './editable.js';

/**
 * @param {HTMLElement} element
 * @param {any} sound
 * @param {{ pointer: string, parameter?: any, label: string }} state  parameter: absent if the vocabulary does not know it
 */
export function Setting(element, sound, { pointer, parameter, label }) {
  const reading = el('span', { class: 'reading' });
  const aside = el('span', { class: 'aside' });
  const origin = el('span', { class: 'origin' });
  const flag = el('span', { class: 'flag' });
  element.classList.add('setting');
  fill(element, el('span', { class: 'label' }, label), el('span', { class: 'standing' }, reading, aside), origin, flag);
  const field = Editable(reading, { label, readOnly: sound.readOnly, ...shapeOf(parameter, sound.value(pointer)), ...valueOf(), onEdit: onEdit });
  const from = Origin(origin, sound, { pointer, label, words: (value) => words(value) });
  update();
  return { element, update };

  function update() {
    const value = sound.value(pointer);
    const { aside: comesTo } = settingWords(value, parameter, sound.bpm());
    field.show({ ...shapeOf(parameter, value), ...valueOf() });
    aside.textContent = comesTo || (parameter?.type === 'time' && typeof value === 'number' ? 'ms' : '');
    element.classList.toggle('own', sound.own(pointer) === true);
    from.update();
    const objection = sound.hasVocabulary ? unusual(value, parameter, sound.bpm()) : null;
    flag.textContent = objection ? `${objection} Kept as written.` : '';
  }

  function valueOf() {
    const value = sound.value(pointer);
    if (parameter?.type === 'range' && typeof value === 'number') return { value };
    if (typeof value === 'boolean') return { value: value ? 'on' : 'off' };
    return { value: settingWords(value, parameter).text };
  }

  function onEdit(typed) {
    const value = understood(typed);
    if (value === null || value === '') return;
    sound.edit((settings) => write(settings, pointer, value));
  }

  function understood(typed) {
    if (typeof typed === 'number') return typed;
    if (typed === null) return null;
    if (parameter?.type === 'time') return parseTime(typed) ?? null;
    if (parameter?.type === 'switch' || typeof sound.value(pointer) === 'boolean') return typed === 'on';
    return parameter?.type === 'choice' ? typed : parseFree(typed);
  }

  function words(value) {
    const { text, unit } = settingWords(value, parameter);
    return unit ? `${text} ${unit}` : text;
  }
}

/** How an editable value is asked for. */
function shapeOf(parameter, value) {
  if (typeof value === 'boolean' && (!parameter || parameter.type === 'switch')) return { kind: 'choice', choices: [['on', 'on'], ['off', 'off']] };
  if (parameter?.type === 'range' && typeof value === 'number') return { kind: 'number', unit: parameter.unit, scale: parameter, check: (next) => (next === null ? 'Write a number.' : null) };
  if (parameter?.type === 'choice') {
    const choices = parameter.choices.includes(value) ? parameter.choices : [...parameter.choices, value];
    return { kind: 'choice', choices: choices.map((choice) => [choice, choice]) };
  }
  if (parameter?.type === 'time') {
    return {
      kind: 'line', maxLength: 40,
      help: 'Milliseconds, or a note value such as “dotted eighth” or 1/8.',
      check: (typed) => (parseTime(typed) === null ? 'Write milliseconds, or a note value such as “quarter” or “dotted eighth”.' : null),
    };
  }
  return { kind: 'line', maxLength: 200, check: (typed) => (typed.trim() ? null : 'Write a value.') };
}

/**
 * Where a value comes from, and the way back.
 *
 * @param {HTMLElement} element
 * @param {any} sound
 * @param {{ pointer: string, label: string, words: (value: any) => string, quiet?: boolean }} state
 *   quiet: says nothing while the value is the starting point's
 */
export function Origin(element, sound, { pointer, label, words, quiet = false }) {
  update();
  return { update };

  function update() {
    const own = sound.own(pointer);
    element.hidden = own === null || (quiet && !own);
    if (own === null) return;
    if (!own) {
      fill(element, quiet ? null : sound.startName());
      return;
    }
    const before = read(sound.start(), pointer);
    fill(element, el('span', { class: 'here' }, 'this piece'),
      before === undefined || sound.readOnly ? null : el('button', {
        type: 'button', class: 'quiet give-back', title: `${sound.startName()} has ${words(before)}`,
        'aria-label': `${label}: back to ${words(before)}, as in ${sound.startName()}`,
        on: { click: () => sound.giveBack(pointer) },
      }, `back to ${words(before) || 'nothing'}`));
  }
}
