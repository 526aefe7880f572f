/**
 * felt.js: how it felt, as a place on a string from rough to singing.
 *
 *   Felt(element, { value: 'good', onChoose: (felt) => { … } })   // to choose; value undefined = not said
 *   feltMark('good')                                              // to read, for lists
 */
import { el, fill } from '../dom.js';
import { newKey } from '../words-rules.js';

/** Worst first. */
const FELT_WORDS = ['rough', 'uneasy', 'fair', 'good', 'singing'];

/** @param {HTMLElement} element @param {{ value?: string, onChoose: (felt: string) => void }} state */
export function Felt(element, state) {
  // Two of them on one page are two questions.
  const name = `felt-${newKey()}`;
  element.classList.add('felt');
  fill(element, el('fieldset', {},
    el('legend', { class: 'label' }, 'How did it feel?'),
    el('div', { class: 'along' }, FELT_WORDS.map((word) => el('label', {},
      el('input', { type: 'radio', name, value: word, checked: word === state.value, on: { change: () => state.onChoose(word) } }),
      el('span', {}, word))))));
  return {
    show(next) {
      state = { ...state, ...next };
      for (const input of element.querySelectorAll('input')) input.checked = input.value === state.value;
    },
  };
}

/** @param {string | undefined} felt */
export function feltMark(felt) {
  const place = FELT_WORDS.indexOf(felt ?? '');
  if (place < 0) return null;
  const dot = el('i', { 'aria-hidden': 'true' });
  dot.style.left = `${place * 25}%`;
  return el('span', { class: 'felt-mark' }, el('span', { class: 'line-of-it', 'aria-hidden': 'true' }, dot), felt);
}
