/** setting-rules.js: one value of a sound, in words and read back from words; times as note values. No DOM. */
import { number, parseNumber } from './words-rules.js';

const QUARTERS = { whole: 4, half: 2, quarter: 1, eighth: 0.5, sixteenth: 0.25, 'thirty-second': 0.125 };
const FEELS = { '': 1, 'dotted ': 3 / 2, 'triplet ': 2 / 3 };
const FRACTIONS = { 1: 'whole', 2: 'half', 4: 'quarter', 8: 'eighth', 16: 'sixteenth', 32: 'thirty-second' };

/** Every note value by name, longest length first; each plain, dotted, triplet. */
export const NOTE_VALUES = Object.keys(QUARTERS).flatMap((length) => Object.keys(FEELS).map((feel) => feel + length));

/**
 * How long a note value lasts: 60000 / bpm for a quarter, half as much again when dotted, two thirds in a triplet.
 *
 * @param {string} note such as "dotted eighth"
 * @param {number} bpm quarter notes a minute, above 0
 * @returns {number | null} milliseconds; null for a note value that is none
 */
export function noteMillis(note, bpm) {
  const [, feel, length] = /^(dotted |triplet )?(.*)$/.exec(note);
  const quarters = Object.hasOwn(QUARTERS, length) ? QUARTERS[length] * FEELS[feel ?? ''] : null;
  return quarters === null ? null : (60_000 / bpm) * quarters;
}

/** "375", "208.3": to a tenth of a millisecond. @param {number} millis */
export function millisWords(millis) {
  return number(Math.round(millis * 10) / 10);
}

/**
 * What a player types for a time: "375", "375 ms", "0.4 s", "dotted eighth", "eighth dotted", "1/8", "1/8.", "1/8d", "1/8t".
 *
 * @param {string} typed
 * @returns {number | { note: string } | null} milliseconds, or a note value; null if it is neither
 */
export function parseTime(typed) {
  const plain = typed.trim().toLowerCase().replace(/\s+/g, ' ');
  const [, amount, unit] = /^(.*?) ?(ms|s)?$/.exec(plain);
  const value = parseNumber(amount);
  if (value !== null) return unit === 's' ? value * 1000 : value;
  const fraction = /^1\/(\d+) ?(\.|d|dotted|t|triplet)?$/.exec(plain);
  if (fraction) {
    const feel = { '.': 'dotted ', d: 'dotted ', dotted: 'dotted ', t: 'triplet ', triplet: 'triplet ' }[fraction[2]] ?? '';
    return Object.hasOwn(FRACTIONS, fraction[1]) ? { note: feel + FRACTIONS[fraction[1]] } : null;
  }
  const words = plain.replace(/ notes?$/, '').replace(/^(.+) (dotted|triplet)$/, '$2 $1');
  return NOTE_VALUES.includes(words) ? { note: words } : null;
}

/**
 * A value as it stands on the page.
 *
 * @param {any} value number, text, true or false, { note }; undefined if it is not set
 * @param {any} [parameter] of the synth's vocabulary; absent if the vocabulary does not know it
 * @param {number} [bpm] of the piece
 * @returns {{ text: string, unit: string, aside: string }} aside: what it comes to, such as "375 ms"
 */
export function settingWords(value, parameter, bpm) {
  if (value === undefined || value === null) return { text: '', unit: '', aside: '' };
  if (typeof value === 'boolean') return { text: value ? 'on' : 'off', unit: '', aside: '' };
  if (typeof value === 'number') return { text: number(value), unit: parameter?.type === 'time' ? 'ms' : parameter?.unit ?? '', aside: '' };
  if (typeof value === 'object') {
    const millis = bpm ? noteMillis(value.note, bpm) : null;
    return { text: String(value.note), unit: '', aside: millis === null ? '' : `${millisWords(millis)} ms` };
  }
  return { text: String(value), unit: '', aside: '' };
}

/**
 * What is unusual about a value, in a sentence; it is kept all the same.
 *
 * @param {any} value
 * @param {any} parameter absent if the synth's sheet does not know it
 * @param {number} [bpm]
 * @returns {string | null}
 */
export function unusual(value, parameter, bpm) {
  if (!parameter) return 'The synth’s sheet does not know this setting.';
  if (parameter.type === 'range') {
    if (typeof value !== 'number') return 'The synth’s sheet expects a number here.';
    return beyond(value, parameter.min, parameter.max, parameter.unit);
  }
  if (parameter.type === 'choice') {
    return parameter.choices.includes(value) ? null : `The synth’s sheet knows ${parameter.choices.join(', ')}.`;
  }
  if (parameter.type === 'switch') return typeof value === 'boolean' ? null : 'The synth’s sheet expects on or off here.';
  const millis = typeof value === 'number' ? value : bpm && value?.note ? noteMillis(value.note, bpm) : null;
  if (millis === null) return typeof value === 'object' ? null : 'The synth’s sheet expects a time here.';
  return beyond(millis, parameter.minMillis, parameter.maxMillis, 'ms');
}

function beyond(value, min, max, unit) {
  if (value >= min && value <= max) return null;
  return `The synth’s sheet goes from ${number(min)} to ${number(max)}${unit ? ` ${unit}` : ''}.`;
}

/**
 * Reads what was typed where the vocabulary does not know better: a number if it is one, else the words.
 *
 * @param {string} typed
 * @returns {number | string}
 */
export function parseFree(typed) {
  return parseNumber(typed) ?? typed.trim();
}

/** What a setting starts at when it is put in. @param {any} [parameter] */
export function firstValue(parameter) {
  if (parameter?.type === 'range') return Math.min(parameter.max, Math.max(parameter.min, 0));
  if (parameter?.type === 'choice') return parameter.choices[0];
  if (parameter?.type === 'switch') return true;
  if (parameter?.type === 'time') return parameter.minMillis;
  return 0;
}

/** What the vocabulary calls a key; the key itself if it does not know it. @param {any} [parameter] @param {string} key */
export function settingLabel(parameter, key) {
  return parameter?.label ?? key.replaceAll('-', ' ').replace(/^./, (letter) => letter.toUpperCase());
}

/**
 * A sound in one line, for a stage or a list: "A13: Warm strings 72, Breath above 22; Compressor, Reverb".
 *
 * @param {any} settings whole
 * @param {any} [vocabulary]
 * @returns {{ slot: string, voices: string[], effects: string[], straight: string }} what is on, in order
 */
export function soundSummary(settings, vocabulary) {
  const on = (group) => Object.values(settings?.[group] ?? {}).filter((each) => each.on).sort((one, other) => one.order - other.order);
  const level = (holder) => (typeof holder?.parameters?.level === 'number' ? ` ${number(holder.parameters.level)}` : '');
  return {
    slot: settings?.slot ?? '',
    straight: settings?.straight?.on === false ? '' : `Straight sound${level(settings?.straight)}`,
    voices: on('voices').map((voice) => `${voice.name}${level(voice)}`),
    effects: on('effects').map((effect) => vocabulary?.effects?.[effect.type]?.label ?? effect.type),
  };
}
