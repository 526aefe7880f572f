/** probe-rules.js: readings of an unknown connector, pins down and conditions across. No DOM. */
import { number } from '../words-rules.js';
import { same } from '../drafts-rules.js';
import { parseReading, readingHelp, readingWords } from './meter-rules.js';
import { parseNumber } from '../words-rules.js';

/** A guess this sure may be taken over together with others. */
export const LIKELY = 0.6;

/**
 * The columns: what is going on while the meter is on the pin.
 *
 * @param {string[]} strings numbers, highest first
 * @returns {{ key: string, words: string, units: string[] }[]}
 */
export function conditions(strings) {
  return [
    { key: 'ground', words: 'To ground, all off', units: ['ohms'] },
    { key: 'silence', words: 'Nothing played', units: ['acMillivolts', 'dcVolts'] },
    ...strings.map((string) => ({ key: string, words: `String ${string} bowed`, units: ['acMillivolts', 'dcVolts'] })),
  ];
}

/** [short, for the ear, what is to be written] of each unit. */
export const UNITS = {
  ohms: ['Ω', 'ohms', readingHelp('resistance')],
  acMillivolts: ['mV AC', 'millivolts AC', 'write a number of millivolts, 100 000 at most'],
  dcVolts: ['V DC', 'volts DC', readingHelp('voltage')],
};

/**
 * One reading as it stands in its field.
 *
 * @param {Record<string, any>} probe by pin
 */
export function cellWords(probe, pin, condition, unit) {
  const readings = probe?.[pin];
  if (condition === 'ground') return readingWords(readings?.toGround);
  const reading = condition === 'silence' ? readings?.silence : readings?.bowed?.[condition];
  return reading?.[unit] === undefined ? '' : number(reading[unit]);
}

/**
 * Writes one reading; empties are taken out.
 *
 * @param {any} content instrument, changed in place
 * @param {string} pin
 * @param {string} condition see conditions
 * @param {string} unit
 * @param {string} typed
 * @returns {boolean} false if it makes no sense; then nothing was changed
 */
export function writeCell(content, pin, condition, unit, typed) {
  const value = parsedCell(condition, unit, typed);
  if (value === undefined) return false;
  const readings = structuredClone(content.probe?.[pin] ?? {});
  if (condition === 'ground') put(readings, 'toGround', value);
  else if (condition === 'silence') put(readings, 'silence', withUnit(readings.silence, unit, value));
  else put(readings, 'bowed', withEntry(readings.bowed, condition, withUnit(readings.bowed?.[condition], unit, value)));
  put(content, 'probe', withEntry(content.probe, pin, Object.keys(readings).length ? readings : null));
  return true;
}

function parsedCell(condition, unit, typed) {
  if (condition === 'ground') return parseReading(typed, 'resistance');
  if (typed.trim() === '') return null;
  const amount = parseNumber(typed);
  const isInside = unit === 'acMillivolts' ? amount >= 0 && amount <= 100_000 : Math.abs(amount) <= 1000;
  return amount === null || !isInside ? undefined : amount;
}

function withUnit(reading, unit, value) {
  return withEntry(reading, unit, value);
}

function withEntry(entries, key, value) {
  const next = { ...entries };
  put(next, key, value);
  return Object.keys(next).length ? next : null;
}

function put(object, key, value) {
  if (value === null) delete object[key];
  else object[key] = value;
}

/** What is asked of the server: every pin of the connector, measured or not. @param {any} instrument content */
export function probeRequest({ connector, strings, probe }) {
  return {
    strings: Object.keys(strings).length,
    pins: Object.fromEntries(Object.keys(connector.pins).map((label) => [label, probe?.[label] ?? {}])),
  };
}

/** In words and on a scale of ten: it is a rank, no probability. @param {number} confidence 0 to 1 */
export function confidenceWords(confidence) {
  const word = confidence >= 0.85 ? 'sure' : confidence >= LIKELY ? 'likely' : 'a guess';
  return `${word}, ${Math.round(confidence * 10)} of 10`;
}

/**
 * Pins whose guess is likely and says something else than what is written.
 *
 * @param {Record<string, any>} guesses by pin
 * @param {Record<string, any>} pins of the connector
 */
export function likelyNews(guesses, pins) {
  return Object.keys(guesses).filter((label) => isNews(guesses[label], pins[label]) && guesses[label].confidence >= LIKELY);
}

/** Whether a guess says something that is not written yet. */
export function isNews(guess, pin) {
  if (!pin || guess.role.carries === 'unknown') return false;
  return guess.role.carries !== pin.role.carries || !Object.entries(guess.role).every(([field, value]) => field === 'volts' ? Math.abs(value - pin.role.volts) <= 0.1 * Math.abs(value) : same(value, pin.role[field]));
}
