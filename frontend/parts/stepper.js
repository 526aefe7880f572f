/**
 * stepper.js: a number between two buttons for the thumb. The buttons repeat while held; the number can also be typed,
 * and steps with the arrow keys (Page Up and Page Down take ten steps).
 *
 *   const stepper = Stepper(element, {
 *     label: 'Sensitivity of string 1', value: 20, scale: { min: 0, max: 50, step: 1, customaryStart: 22 },
 *     unit: '', onStep: (value) => { … },
 *   });
 *   stepper.show({ value: 21 });   // any part of the state
 *
 * value null = not set yet. A typed number outside the scale is held at its end and said so; what is no number gives way to the
 * value from before it was typed, and that is said, too.
 */
import { el, fill } from '../dom.js';
import { number, parseNumber } from '../words-rules.js';
import { repeatWhileHeld } from './hold.js';
import { stepped, within } from './stepper-rules.js';

/**
 * @param {HTMLElement} element
 * @param {{ label: string, value: number | null, scale: import('./stepper-rules.js').Scale, unit?: string, emptyWord?: string,
 *   onStep: (value: number | null) => void }} state
 */
export function Stepper(element, state) {
  const less = el('button', { type: 'button', class: 'less' }, '−');
  const more = el('button', { type: 'button', class: 'more' }, '+');
  const input = el('input', { inputmode: 'decimal', role: 'spinbutton', autocomplete: 'off', enterkeyhint: 'done', maxlength: 12 });
  const unit = el('span', { class: 'unit' });
  const told = el('span', { class: 'unseen', role: 'status' });
  element.classList.add('stepper');
  fill(element, less, el('span', { class: 'reading' }, input, unit), more, told);
  repeatWhileHeld(less, () => step(-1), { onRelease: tell });
  repeatWhileHeld(more, () => step(1), { onRelease: tell });
  input.addEventListener('keydown', onKey);
  input.addEventListener('input', typed);
  input.addEventListener('change', settle);
  /** What stood there before the field was typed in. */
  let before = state.value;
  input.addEventListener('focus', () => {
    before = state.value;
    input.select();
  });
  update();
  return {
    element,
    /** @param {Partial<typeof state>} next */
    show(next) {
      state = { ...state, ...next };
      update();
    },
  };

  function step(steps) {
    set(stepped(state.value, state.scale, steps));
    before = state.value;
    input.value = words();
  }

  function set(value) {
    say('');
    if (value === state.value) return;
    state.value = value;
    update();
    state.onStep(value);
  }

  function onKey(event) {
    const steps = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    if (steps) {
      event.preventDefault();
      step(steps);
    }
    if (event.key === 'Enter') settle();
  }

  // Every keystroke counts: the phone may lock before the field is left.
  function typed() {
    const value = parseNumber(input.value);
    if (value !== null && value === within(value, state.scale)) set(value);
    if (input.value.trim() === '') set(null);
  }

  function settle() {
    const typed = input.value.trim();
    const value = parseNumber(typed);
    if (value !== null) {
      set(within(value, state.scale));
      if (value !== state.value) say(`The scale ends at ${number(state.value)}.`, true);
    } else if (typed !== '') {
      set(before);
      say(`“${typed}” was not taken: write a number.`, true);
    }
    before = state.value;
    input.value = words();
  }

  function tell() {
    say(state.value === null ? '' : `${state.label}: ${number(state.value)} ${state.unit ?? ''}`);
  }

  // What the eye sees for itself is for the ear alone; that another number was taken than was typed is for both.
  function say(sentence, isSeen = false) {
    told.textContent = sentence;
    told.className = isSeen ? 'ended' : 'unseen';
  }

  function words() {
    return state.value === null ? '' : number(state.value);
  }

  function update() {
    if (document.activeElement !== input) input.value = words();
    input.placeholder = state.emptyWord ?? '–';
    input.setAttribute('aria-label', state.label);
    input.setAttribute('aria-valuemin', state.scale.min);
    input.setAttribute('aria-valuemax', state.scale.max);
    if (state.value === null) {
      input.removeAttribute('aria-valuenow');
      input.setAttribute('aria-valuetext', 'not set');
    } else {
      input.setAttribute('aria-valuenow', state.value);
      input.setAttribute('aria-valuetext', `${number(state.value)} ${state.unit ?? ''}`.trim());
    }
    unit.textContent = state.value === null ? '' : state.unit ?? '';
    input.style.width = `${Math.max(2, (input.value || input.placeholder).length) + 0.4}ch`;
    less.setAttribute('aria-label', `${state.label}: less`);
    more.setAttribute('aria-label', `${state.label}: more`);
    less.disabled = state.value !== null && state.value <= state.scale.min;
    more.disabled = state.value !== null && state.value >= state.scale.max;
  }
}
