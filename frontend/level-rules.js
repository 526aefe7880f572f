/** level-rules.js: what the level bench's page works out itself. No DOM. */
import { number, shortDay } from './words-rules.js';

/** @typedef {{ string: number, from: number, to: number, loudness: string }} Segment seconds */

export const LOUDNESSES = ['soft', 'medium', 'loud'];

/** The shortest stroke that can be marked, in seconds. */
const SHORTEST = 0.1;

/** "−41.2", a tenth of a decibel; a dash if it is not known. @param {number | null | undefined} decibels */
export function tenth(decibels) {
  return decibels === null || decibels === undefined ? '–' : number(Math.round(decibels * 10) / 10 || 0);
}

/** "+1.2". @param {number | null | undefined} decibels */
export function signedTenth(decibels) {
  return decibels > 0 && Math.round(decibels * 10) > 0 ? `+${tenth(decibels)}` : tenth(decibels);
}

/**
 * A stroke with one of its ends elsewhere. It stays within the recording and keeps its shortest length.
 *
 * @param {Segment} segment
 * @param {'from' | 'to'} end
 * @param {number} seconds
 * @param {number} length of the recording
 * @returns {Segment}
 */
export function withEnd(segment, end, seconds, length) {
  const low = end === 'from' ? 0 : segment.from + SHORTEST;
  const high = end === 'from' ? segment.to - SHORTEST : length;
  return { ...segment, [end]: Math.round(Math.max(low, Math.min(high, seconds)) * 1000) / 1000 };
}

/** A stroke for the player to put in its place: in the longest gap there is. @param {Segment[]} segments @param {number} length @returns {Segment} */
export function newStroke(segments, length) {
  const ordered = [...segments].sort((one, other) => one.from - other.from);
  let gap = { from: 0, to: ordered[0]?.from ?? length };
  ordered.forEach((segment, index) => {
    const to = ordered[index + 1]?.from ?? length;
    if (to - segment.to > gap.to - gap.from) gap = { from: segment.to, to };
  });
  const middle = (gap.from + gap.to) / 2;
  const half = Math.max(SHORTEST / 2, Math.min(0.5, (gap.to - gap.from) / 3));
  const from = Math.max(0, middle - half);
  return { string: 1, from, to: from + 2 * half, loudness: 'medium' };
}

/** What the server needs of a stroke, in order of time. @param {Segment[]} segments @returns {Segment[]} */
export function bare(segments) {
  return segments.map(({ string, from, to, loudness }) => ({ string, from, to, loudness })).sort((one, other) => one.from - other.from);
}

/**
 * How wide a recording must be drawn so that most strokes are 44 pixels wide, within reason.
 *
 * @param {Segment[]} segments
 * @param {number} length of the recording, in seconds
 */
export function widthForThumbs(segments, length) {
  const lengths = segments.map(({ from, to }) => to - from).sort((one, other) => one - other);
  const usual = lengths[Math.floor(lengths.length / 4)];
  return usual ? Math.min(6000, Math.ceil((length / usual) * 44)) : 0;
}

/** How dark a leak is drawn: 0 (−60 dB or less) to 5 (−10 dB or more). @param {number} decibels */
export function shade(decibels) {
  return Math.max(0, Math.min(5, Math.floor((decibels + 60) / 10)));
}

/**
 * The outline of one input's amplitudes around a middle line. Square roots, so that soft strokes show.
 *
 * @param {number[]} peaks 0 to 1
 * @param {number} loudest what reaches the full height
 * @param {{ width: number, middle: number, half: number }} place
 */
export function outline(peaks, loudest, { width, middle, half }) {
  const step = width / Math.max(1, peaks.length);
  const heights = peaks.map((peak) => Math.round(Math.sqrt(Math.min(1, peak / loudest)) * half * 10) / 10);
  const xOf = (index) => Math.round((index + 0.5) * step * 10) / 10;
  const above = heights.map((height, index) => `${xOf(index)} ${Math.round((middle - height) * 10) / 10}`);
  const below = heights.map((height, index) => `${xOf(index)} ${Math.round((middle + height) * 10) / 10}`).reverse();
  return `M${above.join('L')}L${below.join('L')}Z`;
}

/** Whole tens of decibels around all windows. @param {any[]} windows */
export function scaleOf(windows) {
  const all = windows.flatMap((each) => [each.lowDbfs, each.highDbfs, each.softestStrokeDbfs, each.loudestLeakDbfs]);
  return { low: Math.floor((Math.min(...all) - 2) / 10) * 10, high: Math.ceil((Math.max(...all) + 2) / 10) * 10 };
}

/**
 * A rig with the advised sensitivities, and the measurement attached.
 *
 * @param {any} content
 * @param {any[]} advice
 * @param {any} summary
 * @param {string} today
 */
export function applied(content, advice, summary, today) {
  const assignments = { ...content.assignments };
  for (const { string, setting } of advice) {
    assignments[string] = { trimDecibels: 0, ...assignments[string], sensitivity: setting };
  }
  return { ...content, date: today, assignments, levels: summary };
}

/** The reason for the note of the new revision. @param {any} content before @param {any[]} advice @param {any} summary @param {boolean} isAssumed */
export function reason(content, advice, summary, isAssumed) {
  const steps = advice
    .filter(({ string, setting }) => content.assignments?.[string]?.sensitivity !== setting)
    .map(({ string, setting }) => {
      const was = content.assignments?.[string]?.sensitivity;
      return `string ${string} ${was === undefined ? '' : `${number(was)} → `}${number(setting)}`;
    });
  const from = summary.from ? ` (${summary.from})` : '';
  return `Level bench, ${shortDay(summary.measuredOn)}${from}: ${steps.length ? steps.join(', ') : 'nothing to change'}${isAssumed ? '; partly assumed' : ''}`.slice(0, 1000);
}

/**
 * What the bench says, behind what the player has written; once, however often it is applied.
 *
 * @param {string} typed
 * @param {string} words
 */
export function withReason(typed, words) {
  if (typed.includes(words)) return typed;
  return typed ? `${typed}; ${words}`.slice(0, 1000) : words;
}

/** Whether two measurements can be drawn on one scale. */
export function shareScale(one, other) {
  return Boolean(one && other && one.source === other.source);
}

/** "1 min 12 s", "8 s". @param {number} seconds */
export function duration(seconds) {
  const whole = Math.round(seconds);
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`;
}
