/**
 * ready-mark.js: whether the adapter may be soldered.
 *
 *   ReadyMark(element).show(standing({ sheet, missing }));   // see wiring-rules.js
 */
import { el, fill } from '../dom.js';

/** @param {HTMLElement} element */
export function ReadyMark(element) {
  const sign = el('span', { class: 'sign', 'aria-hidden': 'true' });
  const mark = el('strong');
  const words = el('span', { class: 'words' });
  element.classList.add('ready-mark');
  element.setAttribute('role', 'status');
  fill(element, sign, el('span', {}, mark, words));
  return { element, show };

  /** @param {ReturnType<typeof import('../wiring-rules.js').standing>} told */
  function show({ isJudged, isReady, ...told }) {
    element.classList.toggle('ready', isReady);
    element.classList.toggle('stopped', isJudged && !isReady);
    // Written only when it differs, so that a screen reader hears it once.
    if (mark.textContent === told.mark && words.textContent === told.words) return;
    sign.textContent = isReady ? '✓' : isJudged ? '✕' : '…';
    mark.textContent = told.mark;
    words.textContent = told.words;
  }
}
