/**
 * trouble.js: what went wrong and what can be done about it, in place of a page or of a part of it.
 *
 *   Trouble(element, failure, { again: () => load() })
 */
import { Away, Problem } from '../api.js';
import { el, fill } from '../dom.js';
import { asSentence } from '../words-rules.js';
import { signInLink } from './signed-out.js';

/** @param {HTMLElement} element @param {any} failure @param {{ again?: () => void }} [doors] */
export function Trouble(element, failure, { again } = {}) {
  const [head, advice] = words(failure);
  const needsSignIn = failure instanceof Problem && failure.status === 401;
  element.classList.add('trouble');
  fill(element,
    el('h2', {}, head),
    el('p', {}, advice),
    isOurFault(failure) ? el('p', { class: 'small pencil' }, 'If you ask for help, quote this request: ', el('code', {}, failure.body.requestId)) : null,
    el('div', { class: 'buttons' },
      needsSignIn ? signInLink('Sign in', { class: 'button inked' }) : null,
      again ? el('button', { type: 'button', on: { click: again } }, 'Try again') : null,
      el('a', { class: 'button quiet', href: '/' }, 'To the first page')));
}

function isOurFault(failure) {
  return failure instanceof Problem && failure.status >= 500 && failure.body.requestId;
}

function words(failure) {
  if (failure instanceof Away) {
    return ['The notebook is out of reach', 'Is Rosinbook running, and is this device on the same network? What you have written on this device is safe.'];
  }
  if (failure instanceof Problem && failure.status === 401) {
    return ['Sign in first', 'Your sign-in has ended, or there was none. Sign in, then come back and try again; what you have written on this device is safe.'];
  }
  if (failure instanceof Problem && failure.status === 404) {
    if (failure.type === 'no-such-notebook') return ['There is no notebook here', 'It is gone, or it was closed to you. Look under “More”, “People” which notebooks you may open.'];
    return ['This leaf is not in the notebook', 'The link may be older than the notebook, or belong to another one.'];
  }
  if (failure instanceof Problem) return [failure.title || 'The notebook refused', asSentence(failure.message)];
  if (failure instanceof RangeError) return ['Not in this notebook', failure.message];
  console.error(failure);
  return ['This page could not be drawn', `${failure?.message ?? failure}. Loading it again often helps; your notebook is untouched.`];
}
