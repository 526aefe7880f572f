/**
 * trouble.js: what went wrong and what can be done about it, in place of a page or of a part of it.
 *
 *   Trouble(element, failure, { again: () => load() })
 */
import { Away, Problem } from '../api.js';
import { el, fill } from '../dom.js';
import { asSentence } from '../words-rules.js';

/** @param {HTMLElement} element @param {any} failure @param {{ again?: () => void }} [doors] */
export function Trouble(element, failure, { again } = {}) {
  const [head, advice] = words(failure);
  const needsSignIn = failure instanceof Problem && failure.status === 401;
  element.classList.add('trouble');
  fill(element,
    el('h2', {}, head),
    el('p', {}, advice),
    el('div', { class: 'buttons' },
      needsSignIn ? el('a', { class: 'button inked', href: '/sign-in' }, 'Sign in') : null,
      again ? el('button', { type: 'button', on: { click: again } }, 'Try again') : null,
      el('a', { class: 'button quiet', href: '/' }, 'To the first page')));
}

function words(failure) {
  if (failure instanceof Away) {
    return ['The notebook is out of reach', 'Is Rosinbook running, and is this device on the same network? What you have written on this device is safe.'];
  }
  if (failure instanceof Problem && failure.status === 401) {
    return ['Sign in first', 'This notebook asks for its passphrase. What you have written on this device is safe.'];
  }
  if (failure instanceof Problem && failure.status === 404) {
    return ['This leaf is not in the notebook', 'The link may be older than the notebook, or belong to another one.'];
  }
  if (failure instanceof Problem) return [failure.title || 'The notebook refused', asSentence(failure.message)];
  if (failure instanceof RangeError) return ['Not in this notebook', failure.message];
  console.error(failure);
  return ['This page could not be drawn', `${failure?.message ?? failure}. Loading it again often helps; your notebook is untouched.`];
}
