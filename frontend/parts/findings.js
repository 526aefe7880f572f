/**
 * findings.js: what the check has to say, gravest first, each with what to do.
 *
 *   Findings(element).show(sheet.findings);
 *   Findings(element, { foldAdvice: true })     // advice beyond a few lines folds away; what matters more never does
 */
import { el, fill } from '../dom.js';
import { counted } from '../words-rules.js';

/** What each severity is called. */
export const SEVERITY_WORDS = { unsafe: 'Unsafe', faulty: 'Will not work', advice: 'To think about' };

const MOST_ADVICE = 3;

/** @param {HTMLElement} element @param {{ foldAdvice?: boolean }} [state] */
export function Findings(element, { foldAdvice = false } = {}) {
  const grave = el('ul');
  const advice = el('ul');
  const words = el('summary');
  const folded = el('details', {}, words);
  element.classList.add('findings');
  fill(element, grave, foldAdvice ? folded : null, advice);
  return { element, show };

  /** @param {{ severity: string, place: string, sentence: string, remedy: string }[]} findings */
  function show(findings) {
    const light = findings.filter(({ severity }) => severity === 'advice');
    const folds = foldAdvice && light.length > MOST_ADVICE;
    element.hidden = findings.length === 0;
    fill(grave, findings.filter(({ severity }) => severity !== 'advice').map(line));
    fill(advice, light.map(line));
    words.textContent = `${counted(light.length, 'thing')} to think about`;
    folded.hidden = !folds;
    (folds ? folded : element).append(advice);
  }
}

function line({ severity, sentence, remedy, place }) {
  return el('li', { class: severity },
    el('p', {}, el('strong', {}, SEVERITY_WORDS[severity] ?? severity), ': ', sentence, ' ', el('span', { class: 'unseen' }, `(${place})`)),
    el('p', { class: 'remedy' }, remedy));
}
