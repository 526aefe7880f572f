/** vocabulary-rules.js: a synth's own words for what can be set. No DOM. */
import { inOrder } from './order-rules.js';
import { number } from './words-rules.js';

/** Kinds of parameter: [type, words]. */
export const TYPES = [
  ['range', 'a number'],
  ['choice', 'one of several words'],
  ['switch', 'on or off'],
  ['time', 'a time'],
];

/**
 * A readable key that is not taken: "Low cut" becomes "low-cut", then "low-cut-2".
 *
 * @param {string} label
 * @param {Record<string, any>} taken
 */
export function keyFor(label, taken) {
  const plain = label.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-+|-+$/g, '').slice(0, 40) || 'part';
  let key = plain;
  for (let count = 2; Object.hasOwn(taken, key); count++) key = `${plain}-${count}`;
  return key;
}

/** Whether a key can hold this name: a setting that the synth's sheet does not know has no other place for it. @param {string} label */
export function isNameOfKey(label) {
  return /^[a-z0-9\p{P}\p{S}\s]*[a-z0-9][a-z0-9\p{P}\p{S}\s]*$/iu.test(label.normalize('NFKD').replace(/\p{M}/gu, ''));
}

/** @param {string} type @param {string} label @param {number} order */
export function newParameter(type, label, order) {
  const common = { type, label, order };
  if (type === 'choice') return { ...common, choices: ['plain'] };
  if (type === 'switch') return common;
  if (type === 'time') return { ...common, minMillis: 0, maxMillis: 2000 };
  return { ...common, min: 0, max: 100, step: 1, unit: '' };
}

/** What a parameter can be, in a line: "0 to 100 %", "dark, plain, bright". @param {any} parameter */
export function extent(parameter) {
  if (parameter.type === 'choice') return parameter.choices.join(', ');
  if (parameter.type === 'switch') return 'on or off';
  if (parameter.type === 'time') return `${number(parameter.minMillis)} to ${number(parameter.maxMillis)} ms, or a note value`;
  return `${number(parameter.min)} to ${number(parameter.max)}${parameter.unit ? ` ${parameter.unit}` : ''}`;
}

/**
 * Moves one up or down by taking an order between its new neighbours, so that the others stay untouched.
 *
 * @param {Record<string, { order: number }>} parameters changed in place
 * @param {string} key
 * @param {-1 | 1} direction
 */
export function move(parameters, key, direction) {
  const keys = inOrder(parameters);
  const place = keys.indexOf(key);
  const [near, far] = [keys[place + direction], keys[place + 2 * direction]];
  if (near === undefined) return;
  const nearOrder = parameters[near].order;
  parameters[key].order = far === undefined ? nearOrder + direction : (nearOrder + parameters[far].order) / 2;
}

/** "dark, plain , bright" as words, each once. @param {string} typed */
export function choicesOf(typed) {
  return [...new Set(typed.split(/[,;\n]/).map((word) => word.trim()).filter(Boolean))];
}

/** What is not right yet about a parameter, or null. @param {any} parameter */
export function missingInParameter(parameter) {
  if (parameter.type === 'range' && !(parameter.max > parameter.min)) return `${parameter.label}: the most must be above the least.`;
  if (parameter.type === 'range' && parameter.step > parameter.max - parameter.min) return `${parameter.label}: the step is wider than the range.`;
  if (parameter.type === 'time' && parameter.maxMillis < parameter.minMillis) return `${parameter.label}: the longest time is shorter than the shortest.`;
  if (parameter.type === 'choice' && parameter.choices.length === 0) return `${parameter.label}: give at least one word to choose.`;
  return null;
}

/** What is not right yet about a synth, or null. @param {any} synth content */
export function missingInSynth(synth) {
  if (!synth.title?.trim()) return 'Give the synth a name first.';
  const { min, max, step } = synth.sensitivityScale;
  if (!(max > min)) return 'The sensitivity scale must end above where it begins.';
  if (step > max - min) return 'The step of the sensitivity scale is wider than the scale.';
  for (const line of Object.values(synth.controlLines ?? {})) {
    if (!(line.maxVolts > line.minVolts)) return `${line.label}: the highest voltage must be above the lowest.`;
    for (const band of line.bands ?? []) {
      if (!(band.toVolts > band.fromVolts)) return `${line.label}: the band “${band.meaning}” must end above where it begins.`;
      if (band.fromVolts < line.minVolts || band.toVolts > line.maxVolts) return `${line.label}: the band “${band.meaning}” leaves the line's range.`;
    }
  }
  const { straight = {}, voice = {}, effects = {} } = synth.vocabulary ?? {};
  const parameters = [straight, voice, ...Object.values(effects).map((effect) => effect.parameters)].flatMap((group) => Object.values(group));
  return parameters.map(missingInParameter).find(Boolean) ?? null;
}
