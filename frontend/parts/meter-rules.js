/** meter-rules.js: readings of a meter: typed, kept, judged. No DOM. */
import { number, parseNumber } from '../words-rules.js';
import { ohmsWords } from './adapter-rules.js';
import { parseOhms } from './route-rules.js';

const NO_CONNECTION = /^(no|open|ol|o\.l\.?|over|no connection|∞)$/i;

/**
 * What was typed at one step.
 *
 * @param {string} typed "0.3", "4.7k", "open", "OL"; volts at a voltage step
 * @param {string} kind of the step
 * @returns {any} a reading; null if nothing was typed; undefined if it makes no sense
 */
export function parseReading(typed, kind) {
  const words = typed.trim();
  if (words === '') return null;
  if (kind === 'voltage') {
    const volts = parseNumber(words.replace(/\s*v$/i, ''));
    return volts === null || Math.abs(volts) > 1000 ? undefined : { read: 'volts', volts };
  }
  if (NO_CONNECTION.test(words)) return { read: 'open' };
  if (parseNumber(words.replace(/\s*(Ω|ohms?)$/i, '')) === 0) return { read: 'ohms', ohms: 0 };
  const ohms = parseOhms(words);
  return ohms === null ? undefined : { read: 'ohms', ohms };
}

/** What is to be written at a step of this kind. @param {string} kind */
export function readingHelp(kind) {
  return kind === 'voltage' ? 'write a number of volts, 1000 at most' : 'write ohms, such as 220 or 4.7k, or “no” for no connection';
}

/** As it stands in the field. @param {any} [reading] */
export function readingWords(reading) {
  if (!reading) return '';
  if (reading.read === 'open') return 'no connection';
  return reading.read === 'volts' ? number(reading.volts) : ohmsWords(reading.ohms).replace(' Ω', '').replace('Ω', '').trim();
}

/**
 * How far the measuring is.
 *
 * @param {{ id: string }[]} steps
 * @param {{ step: string, judgement: string }[]} verdicts
 * @returns {{ good: number, wrong: number, left: number, gone: string[] }} gone: readings of steps that the plan no longer has
 */
export function meterProgress(steps, verdicts) {
  const known = new Set(steps.map(({ id }) => id));
  const count = (judgement) => verdicts.filter((verdict) => known.has(verdict.step) && verdict.judgement === judgement).length;
  const good = count('good');
  const wrong = count('wrong') + count('misplaced');
  return { good, wrong, left: steps.length - good - wrong, gone: verdicts.filter(({ step }) => !known.has(step)).map(({ step }) => step) };
}
