/**
 * findings.js: what the check has to say, gravest first, each with what to do.
 *
 *   Findings(element).show(sheet.findings);
 */
import { el, fill } from '../dom.js';

/** What each severity is called. */
export const SEVERITY_WORDS = { unsafe: 'Unsafe', faulty: 'Will not work', advice: 'To think about' };

/** @param {HTMLElement} element */
export function Findings(element) {
  element.classList.add('findings');
  return {
    element,
    /** @param {{ severity: string, place: string, sentence: string, remedy: string }[]} findings */
    show(findings) {
      element.hidden = findings.length === 0;
      fill(element, findings.map(({ severity, sentence, remedy, place }) => el('li', { class: severity },
        el('p', {}, el('strong', {}, SEVERITY_WORDS[severity] ?? severity), ': ', sentence, ' ', el('span', { class: 'unseen' }, `(${place})`)),
        el('p', { class: 'remedy' }, remedy))));
    },
  };
}
