/** log-rehearsal-rules.js: what is written down when a rehearsal is over. No DOM. */

/**
 * The entry of a new log line.
 *
 * @param {string} date ISO
 * @returns {{ date: string, event: string, text: string, felt?: string }}
 */
export function blankEntry(date) {
  return { date, event: 'rehearsal', text: '' };
}

/** Occasions: [event, words]. */
export const EVENTS = [
  ['rehearsal', 'Rehearsal'],
  ['concert', 'Concert'],
  ['practice', 'Practice'],
  ['bench', 'At the bench'],
  ['repair', 'Repair'],
];

/** @param {string} event */
export function eventWords(event) {
  return EVENTS.find(([each]) => each === event)?.[1] ?? event;
}

/**
 * The strings whose values differ from the rig as it was opened, in a line: "E5 20 → 22 (+2)".
 *
 * @param {any} before rig content
 * @param {any} now rig content
 * @param {string} string its number
 * @returns {{ was: number | undefined, now: number | undefined } | null} null if the sensitivity is the same
 */
export function sensitivityStep(before, now, string) {
  const was = before?.assignments?.[string]?.sensitivity;
  const is = now.assignments?.[string]?.sensitivity;
  return was === is ? null : { was, now: is };
}
