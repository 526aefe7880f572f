/**
 * sure-button.js: a button that asks once more before it does what cannot be undone; leaving it asks no more.
 *
 *   SureButton({ word: 'Revoke', about: 'For Jonas', question: 'Really close this link for good?', act: async () => { … }, trouble })
 */
import { el, fill } from '../dom.js';
import { asSentence } from '../words-rules.js';

/**
 * @param {{ word: string, about?: string, question: string, act: () => Promise<unknown>, trouble: HTMLElement }} state
 *   about: whom or what it concerns, for those who hear the page; trouble: where it says what went wrong
 * @returns {HTMLButtonElement}
 */
export function SureButton({ word, about, question, act, trouble }) {
  const button = el('button', { type: 'button', class: 'quiet' });
  let isSure = false;
  ask(false);
  button.addEventListener('blur', () => ask(false));
  button.addEventListener('click', async (event) => {
    if (!isSure) {
      ask(true);
      return;
    }
    // The second half of a double click answers nothing that could have been read.
    if (event.detail > 1) return;
    button.disabled = true;
    trouble.textContent = '';
    try {
      await act();
    } catch (failure) {
      button.disabled = false;
      trouble.textContent = asSentence(failure.message);
    }
  });
  return button;

  function ask(yes) {
    isSure = yes;
    fill(button, yes ? question : word, !yes && about ? el('span', { class: 'unseen' }, ` ${about}`) : null);
  }
}
