/**
 * ready-mark.js: whether the adapter may be soldered.
 *
 *   ReadyMark(element).show({ sheet, missing });   // sheet: the server's answer or null; missing: why there is none
 */
import { el, fill } from '../dom.js';
import { standingWords } from '../wiring-rules.js';

/** @param {HTMLElement} element */
export function ReadyMark(element) {
  const sign = el('span', { class: 'sign', 'aria-hidden': 'true' });
  const mark = el('strong');
  const words = el('span', { class: 'words' });
  element.classList.add('ready-mark');
  element.setAttribute('role', 'status');
  fill(element, sign, el('span', {}, mark, words));
  return { element, show };

  /** @param {{ sheet: any, missing: string | null, isEmpty?: boolean }} state */
  function show({ sheet, missing, isEmpty = false }) {
    const isJudged = sheet && !missing && !isEmpty;
    const isReady = isJudged && sheet.readyToSolder;
    element.classList.toggle('ready', Boolean(isReady));
    element.classList.toggle('stopped', Boolean(isJudged && !isReady));
    const told = isJudged ? standingWords(sheet) : { mark: 'Not judged yet', words: missing ?? (isEmpty ? 'There are no routes yet.' : 'Looking …') };
    // Written only when it differs, so that a screen reader hears it once.
    if (mark.textContent === told.mark && words.textContent === told.words) return;
    sign.textContent = isReady ? '✓' : isJudged ? '✕' : '…';
    mark.textContent = told.mark;
    words.textContent = told.words;
  }
}
