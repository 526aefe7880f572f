/**
 * one-line-form.js: one line to write on and what to do with it.
 *
 *   OneLineForm({ id: 'new-notebook', label: 'A new notebook', word: 'Start it', act: async (words) => { … } })
 */
import { el } from '../dom.js';
import { asSentence } from '../words-rules.js';

/**
 * @param {{ id: string, label: string, word: string, value?: string, maxlength: number, help?: string, act: (words: string) => Promise<unknown> }} state
 *   act: told what was written, without spaces around it; what it throws is said under the line
 * @returns {HTMLFormElement}
 */
export function OneLineForm({ id, label, word, value = '', maxlength, help, act }) {
  const input = el('input', { id, value, maxlength, required: true, autocomplete: 'off' });
  const button = el('button', { type: 'submit' }, word);
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  return el('form', { class: 'one-line', on: { submit: send } },
    el('label', { class: 'label', for: id }, label),
    el('div', { class: 'row' }, input, button),
    help ? el('span', { class: 'help' }, help) : null,
    trouble);

  async function send(event) {
    event.preventDefault();
    const words = input.value.trim();
    if (!words) return;
    button.disabled = true;
    trouble.textContent = '';
    try {
      await act(words);
    } catch (failure) {
      trouble.textContent = asSentence(failure.message);
    }
    button.disabled = false;
  }
}
