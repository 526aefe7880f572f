/**
 * editable.js: a value stands as text and opens where it stands. Every keystroke that makes sense is handed on at once
 * (the phone may lock); Escape takes the words back; leaving or Enter closes.
 *
 *   const tempo = Editable(element, {
 *     label: 'Tempo', value: 108, kind: 'number', unit: 'bpm', min: 10, max: 400, empty: 'free', help: '…',
 *     onEdit: (value) => keeping.change((content) => { content.tempoBpm = value ?? undefined; }),
 *   });
 *   tempo.show({ value: 110 });
 *
 * kind: 'line' (one line of text, the default), 'long' (several lines), 'number', 'date', 'choice' (with
 *   choices: [[value, word], …]), 'tick' (a yes or no that never needs opening).
 * value: string for line, long, date, choice; number or null for number; boolean for tick.
 * check(value) → a sentence if the value will not do, or null; the sentence stands under the field. Left like that, the field gives
 *   way to the value from before it was opened, and the sentence stays: half of what was typed is nobody's value.
 * The label is only for the ear; draw a visible one beside it (Fact below does).
 */
import { el, fill } from '../dom.js';
import { longDay, number, parseNumber } from '../words-rules.js';
import { repeatWhileHeld } from './hold.js';
import { stepped } from './stepper-rules.js';

/**
 * @typedef {Object} EditableState
 * @property {string} label
 * @property {any} value
 * @property {'line' | 'long' | 'number' | 'date' | 'choice' | 'tick'} [kind]
 * @property {string} [unit]
 * @property {number} [min]
 * @property {number} [max]
 * @property {import('./stepper-rules.js').Scale} [scale] for a number: arrow keys and two buttons beside the open field step on it;
 *   what is typed may lie beyond its ends
 * @property {[string, string][]} [choices]
 * @property {string} [empty] what stands there while there is no value
 * @property {string} [help] one line under the open field
 * @property {number} [maxLength]
 * @property {string} [about] for the ear: what a tick is about, where its label does not say it
 * @property {boolean} [readOnly]
 * @property {boolean} [isHeading] the value is the heading itself: its label is not read out with it
 * @property {(value: any) => string | null} [check]
 * @property {(value: any) => void} onEdit
 */

/** @param {HTMLElement} element @param {EditableState} state */
export function Editable(element, state) {
  const value = el('button', { type: 'button', class: 'value' });
  let field = null;
  let before;
  let refusal = null;
  element.classList.add('editable');
  value.addEventListener('click', open);
  update();
  return {
    element,
    open,
    /** @param {Partial<EditableState>} next */
    show(next) {
      state = { ...state, ...next };
      if (!field) update();
    },
  };

  function update() {
    if (state.kind === 'tick') {
      drawTick();
      return;
    }
    const isEmpty = state.value === '' || state.value === null || state.value === undefined;
    if (state.readOnly) {
      fill(element, el('span', { class: isEmpty ? 'pencil' : null }, isEmpty ? state.empty ?? '–' : written(state)));
      return;
    }
    value.classList.toggle('vacant', isEmpty);
    value.classList.toggle('long', state.kind === 'long');
    fill(value, state.isHeading ? null : el('span', { class: 'unseen' }, `${state.label}: `), isEmpty ? state.empty ?? 'add' : written(state));
    if (element.firstChild !== value || element.lastChild !== (refusal ?? value)) fill(element, value, refusal);
  }

  function drawTick() {
    const box = element.querySelector('input') ?? el('input', { type: 'checkbox', on: { change: (event) => {
      state.value = event.target.checked;
      state.onEdit(state.value);
    } } });
    box.checked = Boolean(state.value);
    box.disabled = Boolean(state.readOnly);
    if (!box.isConnected) fill(element, el('label', { class: 'tick' }, box, el('span', {}, state.label), el('span', { class: 'unseen' })));
    element.querySelector('.unseen').textContent = state.about ? ` ${state.about}` : '';
  }

  function open() {
    if (field || state.readOnly) return;
    before = state.value;
    refusal = null;
    field = fieldFor(state);
    const trouble = el('span', { class: 'help unsafe', role: 'status' });
    field.setAttribute('aria-label', state.label);
    field.addEventListener('input', () => edited(trouble));
    field.addEventListener('keydown', onKey);
    field.addEventListener('blur', close);
    fill(element,
      el('span', { class: 'open' }, stepButton(-1), field, state.unit ? el('span', { class: 'unit' }, state.unit) : null, stepButton(1)),
      trouble,
      state.help ? el('span', { class: 'help' }, state.help) : null);
    field.focus();
    if (field.select && state.kind !== 'long') field.select();
  }

  /** For the thumb; the arrow keys do the same, so the keyboard passes the buttons by. */
  function stepButton(steps) {
    if (state.kind !== 'number' || !state.scale) return null;
    const button = el('button', { type: 'button', class: 'step', tabindex: -1, 'aria-label': `${state.label}: ${steps > 0 ? 'more' : 'less'}` }, steps > 0 ? '+' : '−');
    // The field keeps the focus: leaving it would close it.
    button.addEventListener('mousedown', (event) => event.preventDefault());
    repeatWhileHeld(button, () => step(steps));
    return button;
  }

  function step(steps) {
    field.value = number(stepped(parseNumber(field.value), state.scale, steps));
    field.dispatchEvent(new Event('input'));
  }

  function edited(trouble) {
    const [next, objection] = readField(field, state);
    trouble.textContent = objection ?? '';
    field.setAttribute('aria-invalid', String(Boolean(objection)));
    if (objection || next === state.value) return;
    state.value = next;
    state.onEdit(next);
  }

  function onKey(event) {
    const steps = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    if (steps && state.kind === 'number' && state.scale) {
      event.preventDefault();
      step(steps);
    }
    if (event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      takeBack();
      shut();
      value.focus();
    }
    if (event.key === 'Enter' && state.kind !== 'long') {
      event.preventDefault();
      close();
      value.focus();
    }
  }

  function close() {
    if (!field) return;
    const [, objection] = readField(field, state);
    if (objection) {
      const typed = field.value.trim();
      refusal = el('span', { class: 'help unsafe', role: 'status' }, typed ? `“${typed}” was not taken. ${objection}` : objection);
      takeBack();
    }
    shut();
  }

  function takeBack() {
    if (state.value === before) return;
    state.value = before;
    state.onEdit(before);
  }

  function shut() {
    field.removeEventListener('blur', close);
    field = null;
    update();
  }
}

/**
 * A labelled editable value as one row of a <dl class="facts">.
 *
 * @param {HTMLElement} list
 * @param {EditableState} state
 */
export function Fact(list, state) {
  const term = el('dt', {}, state.kind === 'tick' ? '' : state.label);
  const place = el('dd');
  list.append(term, place);
  return Editable(place, state);
}

function written({ kind, value, unit, choices }) {
  if (kind === 'number') return [number(value), unit ? el('span', { class: 'unit' }, unit) : null];
  if (kind === 'date') return longDay(value);
  if (kind === 'choice') return choices.find(([each]) => each === value)?.[1] ?? value;
  return value;
}

function fieldFor({ kind, value, choices = [], empty, min, max, maxLength }) {
  if (kind === 'long') {
    const area = el('textarea', { maxlength: maxLength ?? 20_000 });
    area.value = value ?? '';
    return area;
  }
  if (kind === 'choice') return choiceOf(value ?? '', choices, empty);
  if (kind === 'date') return el('input', { type: 'date', value: value ?? '' });
  if (kind === 'number') {
    return el('input', { inputmode: 'decimal', autocomplete: 'off', enterkeyhint: 'done', maxlength: 20,
      value: value === null || value === undefined ? '' : number(value), min, max });
  }
  return el('input', { value: value ?? '', maxlength: maxLength ?? 200, autocomplete: 'off', enterkeyhint: 'done' });
}

/** What is chosen stands in the list, offered or not: the first of the others would look chosen, and could not be. */
function choiceOf(value, choices, empty) {
  const isOffered = choices.some(([each]) => each === value);
  return el('select', {},
    isOffered ? null : el('option', { value, selected: true, disabled: value === '' }, value === '' ? empty ?? '–' : value),
    choices.map(([each, word]) => el('option', { value: each, selected: each === value }, word)));
}

/** @returns {[any, string | null]} the value, and what is wrong with it */
function readField(field, state) {
  // Half a day is empty to whoever asks for the value.
  if (field.validity.badInput) return [null, 'Write the whole day, or none.'];
  if (state.kind !== 'number') return [field.value, state.check?.(field.value) ?? null];
  if (field.value.trim() === '') return [null, state.check?.(null) ?? null];
  const value = parseNumber(field.value);
  if (value === null) return [null, 'Write a number, such as 12 or 0.5.'];
  const unit = state.unit ? ` ${state.unit}` : '';
  if (state.min !== undefined && value < state.min) return [null, `${number(state.min)}${unit} is the least.`];
  if (state.max !== undefined && value > state.max) return [null, `${number(state.max)}${unit} is the most.`];
  return [value, state.check?.(value) ?? null];
}
