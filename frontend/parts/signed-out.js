/**
 * signed-out.js: what to do when the sign-in has ended while somebody was at work: sign in beside this page, then try again.
 *
 *   watchSignIn(element);      // once for each page; the sentence goes when the notebook answers again
 */
import { onAnswer } from '../api.js';
import { el, fill } from '../dom.js';

/** @param {HTMLElement} element empty until it is needed */
export function watchSignIn(element) {
  let isShown = false;
  onAnswer((problem) => show(problem?.type === 'sign-in-needed', problem));

  function show(isNeeded, problem) {
    // What else was refused tells nothing about the sign-in.
    if (isNeeded === isShown || (problem && !isNeeded)) return;
    isShown = isNeeded;
    fill(element, isNeeded ? el('p', { class: 'signed-out no-print', role: 'alert' },
      'Your sign-in has ended. What you wrote is still here: ', signInLink(), ', then come back and try again.') : null);
  }
}

/** Opens beside the page, so that nothing on it is lost. */
export function signInLink(word = 'sign in', attributes = {}) {
  return el('a', { href: '/sign-in', target: '_blank', ...attributes }, word, el('span', { class: 'unseen' }, ' (opens a new tab)'));
}
