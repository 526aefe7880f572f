/**
 * not-read.js: in place of a part of a page that could not be read: why, and the way to try again. The rest of the page stays.
 *
 *   NotRead(element, failure, () => load())
 */
import { el, fill } from '../dom.js';
import { asSentence } from '../words-rules.js';

/** @param {HTMLElement} element @param {any} failure @param {() => void} again */
export function NotRead(element, failure, again) {
  fill(element,
    el('p', { class: 'unsafe', role: 'status' }, asSentence(failure.message)),
    el('div', { class: 'buttons' }, el('button', { type: 'button', on: { click: again } }, 'Try again')));
}
