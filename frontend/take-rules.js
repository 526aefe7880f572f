/**
 * take-rules.js: what the take bench knows without a page: kinds of fault, lanes, zooming, finding. No DOM.
 */
import { number } from './words-rules.js';

/**
 * Kinds of fault: a word, how it is counted, and a shape within a square of 14 whose middle is 0 0.
 * Every kind has its own shape, so that none is told by colour alone.
 *
 * @type {Record<string, { words: string, many: string, path: string, open?: boolean }>}
 */
export const FAULT_KINDS = {
  split: { words: 'split', many: 'splits', path: 'M-5-6h4v12h-4zM1-6h4v12h-4z' },
  staircase: { words: 'staircase', many: 'staircases', path: 'M-6 6v-4h4v-4h4v-4h4v12z' },
  ghost: { words: 'ghost', many: 'ghosts', path: 'M5 0A5 5 0 1 1-5 0A5 5 0 1 1 5 0z', open: true },
  blip: { words: 'blip', many: 'blips', path: 'M0-6L6 5h-12z' },
  'below the open string': { words: 'below the open string', many: 'below the open string', path: 'M-6-3h12L0 6z' },
  'above the fingerboard': { words: 'above the fingerboard', many: 'above the fingerboard', path: 'M-6 3h12L0-6zM-6 5h12v1h-12z' },
  hanging: { words: 'hanging', many: 'hanging', path: 'M-6-2h8v-3l5 5-5 5v-3h-8z' },
  late: { words: 'late', many: 'late', path: 'M-5-6h10L1 0l4 6h-10l4-6z' },
};

/** @param {string} kind */
export function faultKind(kind) {
  return FAULT_KINDS[kind] ?? { words: kind, many: kind, path: 'M-5-5h10v10h-10z' };
}

/**
 * @typedef {{ string: number, noteNumber: number, velocity: number, on: number, off: number, id?: number, from?: number[], glide?: { from: number, to: number, semitones: number } }} RollNote
 * @typedef {{ string: number, low: number, high: number }} Lane  low and high in note numbers
 * @typedef {{ from: number, to: number }} View  seconds
 */

/** Note number of a scientific pitch name such as "E5" or "Bb3". @param {string} name */
export function noteNumber(name) {
  const [, letter, sign, octave] = /^([A-G])([#b]?)(-?\d+)$/.exec(name) ?? [];
  if (!letter) throw new RangeError(`"${name}" is no note`);
  const step = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 }[letter];
  return 12 * (Number(octave) + 1) + step + (sign === '#' ? 1 : sign === 'b' ? -1 : 0);
}

const NAMES = ['C', 'C♯', 'D', 'E♭', 'E', 'F', 'F♯', 'G', 'A♭', 'A', 'B♭', 'B'];

/** @param {number} midi */
export function nameOf(midi) {
  return `${NAMES[midi % 12]}${Math.floor(midi / 12) - 1}`;
}

/**
 * One lane a string, high enough for what is in it and for a fifth above its open note.
 *
 * @param {Record<string, string>} strings open notes by number
 * @param {RollNote[]} notes
 * @returns {Lane[]} string 1 first
 */
export function lanesOf(strings, notes) {
  const lanes = Object.keys(strings).map(Number).sort((one, other) => one - other).map((string) => {
    const open = noteNumber(strings[string]);
    return { string, open, low: open, high: open + 7 };
  });
  const byString = new Map(lanes.map((lane) => [lane.string, lane]));
  for (const note of notes) {
    const lane = byString.get(note.string);
    if (!lane) continue;
    lane.low = Math.min(lane.low, note.noteNumber);
    lane.high = Math.max(lane.high, note.noteNumber);
  }
  return lanes;
}

/** The longest of these notes, in seconds; 0 without any. @param {RollNote[]} notes */
export function longest(notes) {
  let most = 0;
  for (const note of notes) most = Math.max(most, note.off - note.on);
  return most;
}

/**
 * Which of the notes may be in view, without looking at each of them.
 *
 * @param {RollNote[]} notes in order of their start
 * @param {View} view
 * @param {number} mostSeconds how long the longest of them is
 * @returns {[number, number]} first, and one past the last
 */
export function inView(notes, view, mostSeconds) {
  return [firstFrom(notes, view.from - mostSeconds), firstFrom(notes, view.to)];
}

function firstFrom(notes, seconds) {
  let low = 0;
  let high = notes.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (notes[middle].on < seconds) low = middle + 1;
    else high = middle;
  }
  return low;
}

const LEAST_SECONDS = 0.25;

/**
 * Nearer or further, with one moment staying where it is.
 *
 * @param {View} view
 * @param {number} factor below 1 = nearer
 * @param {number} around seconds
 * @param {View} whole
 * @returns {View}
 */
export function zoomed(view, factor, around, whole) {
  const span = Math.min(whole.to - whole.from, Math.max(LEAST_SECONDS, (view.to - view.from) * factor));
  const share = (around - view.from) / (view.to - view.from);
  return within({ from: around - share * span, to: around + (1 - share) * span }, whole);
}

/** The same span elsewhere. @param {View} view @param {number} seconds to the right @param {View} whole @returns {View} */
export function moved(view, seconds, whole) {
  return within({ from: view.from + seconds, to: view.to + seconds }, whole);
}

/** @param {View} view @param {View} whole */
function within(view, whole) {
  const span = Math.min(view.to - view.from, whole.to - whole.from);
  const from = Math.max(whole.from, Math.min(view.from, whole.to - span));
  return { from, to: from + span };
}

/** So that a moment is seen: the view itself if it is, else moved to have it at a third. @param {View} view @param {number} seconds @param {View} whole */
export function showing(view, seconds, whole) {
  const span = view.to - view.from;
  if (seconds >= view.from + span * 0.05 && seconds <= view.to - span * 0.1) return view;
  return within({ from: seconds - span / 3, to: seconds + (span * 2) / 3 }, whole);
}

/** Seconds between the marks of the time axis, so that there are `most` at the most. @param {number} seconds @param {number} most */
export function tickSeconds(seconds, most) {
  return [0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 1800].find((step) => seconds / step <= most) ?? 3600;
}

/** "0:07.4", "12:05". @param {number} seconds @param {number} [decimals] */
export function clock(seconds, decimals = 0) {
  const rounded = Math.max(0, Number(seconds.toFixed(decimals)));
  const minutes = Math.floor(rounded / 60);
  const rest = (rounded - minutes * 60).toFixed(decimals);
  return `${minutes}:${rest.padStart(decimals ? 3 + decimals : 2, '0')}`;
}

/** "26 ghosts, 7 blips": kinds of a string or a take, most first. @param {Record<string, number>} counts */
export function countsInWords(counts) {
  const told = Object.entries(counts).filter(([, count]) => count > 0).sort(([, one], [, other]) => other - one)
    .map(([kind, count]) => `${count} ${count === 1 ? faultKind(kind).words : faultKind(kind).many}`);
  return told.length ? told.join(', ') : 'no faults';
}

/** How many of each kind. @param {{ kind: string }[]} faults @returns {Record<string, number>} */
export function countKinds(faults) {
  const counts = {};
  for (const { kind } of faults) counts[kind] = (counts[kind] ?? 0) + 1;
  return counts;
}

/** The fault after or before another in order of time; from the view's start if there is none yet. */
export function nextFault(faults, currentId, step, view) {
  if (faults.length === 0) return null;
  const at = faults.findIndex((fault) => fault.id === currentId);
  if (at >= 0) return faults[Math.max(0, Math.min(faults.length - 1, at + step))];
  if (step > 0) return faults.find((fault) => fault.at >= view.from) ?? faults.at(-1);
  return faults.filter((fault) => fault.at <= view.to).at(-1) ?? faults[0];
}

/** Thresholds gathered under the word before their colon, in order. @param {{ name: string, label: string }[]} thresholds */
export function thresholdGroups(thresholds) {
  const groups = new Map();
  for (const threshold of thresholds) {
    const word = { GHOST: 'Ghosts', BLIP: 'Blips', BOW: 'Splits: was it a new stroke?', SPLIT: 'Splits: was it a new stroke?', RHYTHM: 'Splits: was it a new stroke?', SHORTEST: 'Splits: was it a new stroke?', STAIRCASE: 'Slides', LATE: 'Late notes' }[threshold.name.split('_')[0]] ?? 'Notes at large';
    groups.set(word, [...(groups.get(word) ?? []), threshold]);
  }
  return [...groups];
}

/** A threshold's figure with its unit. @param {number} figure @param {string} unit */
export function figureInWords(figure, unit) {
  if (unit === 'seconds') return `${number(Math.round(figure * 1000))} ms`;
  if (unit === 'semitones') return `${number(figure)} semitones`;
  if (unit === 'velocity') return `${number(figure)} of velocity`;
  return figure > 0 ? `+${number(figure)}` : number(figure);
}

/** Step of a slider for a threshold. @param {string} unit */
export function figureStep(unit) {
  return { seconds: 0.001, semitones: 1, velocity: 1 }[unit] ?? 0.1;
}
