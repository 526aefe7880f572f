/** pin-places-rules.js: where pins sit on the face of a connector. x and y run from -1 to 1, y upward. No DOM. */

const STEP = 0.05;

/** In order around a circle, the first on top: a start for moving. @param {string[]} labels @returns {Record<string, { x: number, y: number }>} */
export function aroundCircle(labels) {
  return Object.fromEntries(labels.map((label, index) => {
    const angle = (2 * Math.PI * index) / labels.length;
    return [label, { x: snapped(Math.sin(angle) * 0.8), y: snapped(Math.cos(angle) * 0.8) }];
  }));
}

/** Places of all pins; where even one is not noted, all in order around a circle. @param {Record<string, any>} pins */
export function placesOf(pins) {
  const labels = Object.keys(pins).sort((one, other) => Number(one) - Number(other) || one.localeCompare(other));
  if (labels.some((label) => pins[label].x === undefined)) return aroundCircle(labels);
  return Object.fromEntries(labels.map((label) => [label, { x: pins[label].x, y: pins[label].y }]));
}

/**
 * A place seen from the other side is mirrored.
 *
 * @param {{ x: number, y: number }} place
 * @param {string} drawnFrom "mating" or "solder": the side it was noted from
 * @param {string} side the side it is looked at from
 */
export function seenFrom({ x, y }, drawnFrom, side) {
  return { x: drawnFrom === side ? x : 0 - x, y };
}

/** Held on the face, in small steps. @param {number} amount */
export function snapped(amount) {
  return Number((Math.round(Math.max(-1, Math.min(1, amount)) / STEP) * STEP).toFixed(2)) + 0;
}

/** Where an arrow key moves a pin. @param {{ x: number, y: number }} place @param {string} key @returns {{ x: number, y: number } | null} null if it is no arrow */
export function movedBy({ x, y }, key) {
  const by = { ArrowLeft: [-STEP, 0], ArrowRight: [STEP, 0], ArrowUp: [0, STEP], ArrowDown: [0, -STEP] }[key];
  return by ? { x: snapped(x + by[0]), y: snapped(y + by[1]) } : null;
}
