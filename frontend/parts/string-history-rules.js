/**
 * string-history-rules.js: from the revisions of a rig to lines over time, one for each string. No DOM.
 */

/**
 * @typedef {{ revision: number, savedAt: string, date?: string, input?: number, sensitivity?: number, trimDecibels?: number }} Entry
 * @typedef {{ revision: number, day: string, value: number | null, changed: boolean }} Point
 */

/**
 * The revisions at which some string's sensitivity changed, with the first and the last: the rest adds only width.
 *
 * @param {Record<string, Entry[]>} strings oldest first
 * @returns {number[]} ascending
 */
export function tellingRevisions(strings) {
  const telling = new Set();
  for (const entries of Object.values(strings)) {
    entries.forEach((entry, index) => {
      const before = entries[index - 1];
      const isEdge = index === 0 || index === entries.length - 1;
      if (isEdge || before.sensitivity !== entry.sensitivity) telling.add(entry.revision);
    });
  }
  return [...telling].sort((one, other) => one - other);
}

/**
 * @param {Entry[]} entries of one string, oldest first
 * @param {number[]} revisions ascending
 * @returns {Point[]} one for each revision; null while the string had no value
 */
export function pointsOf(entries, revisions) {
  const points = [];
  for (const revision of revisions) {
    const entry = entries.filter((each) => each.revision <= revision).at(-1);
    const value = entry?.sensitivity ?? null;
    const before = points.at(-1);
    points.push({
      revision,
      day: (entry?.date ?? entry?.savedAt ?? '').slice(0, 10),
      value,
      changed: before !== undefined && before.value !== value,
    });
  }
  return points;
}

/**
 * The value a lane's hairline stands for, and how far the lines leave it.
 *
 * @param {Point[][]} lanes
 * @param {number | undefined} customaryStart
 * @returns {{ rest: number, reach: number }} reach is at least 1, so that a straight line stays straight
 */
export function restAndReach(lanes, customaryStart) {
  const values = lanes.flat().map((point) => point.value).filter((value) => value !== null);
  const rest = customaryStart ?? values[0] ?? 0;
  return { rest, reach: Math.max(1, ...values.map((value) => Math.abs(value - rest))) };
}

/** A line's story in a sentence. @param {string} number @param {Point[]} points */
export function inWords(number, points) {
  const known = points.filter((point) => point.value !== null);
  if (known.length === 0) return `String ${number} was never set.`;
  const steps = [known[0].value, ...known.filter((point) => point.changed).map((point) => point.value)]
    .filter((value, index, all) => index === 0 || value !== all[index - 1]);
  return steps.length === 1 ? `String ${number} stayed at ${steps[0]}.` : `String ${number} went ${steps.join(', ')}.`;
}
