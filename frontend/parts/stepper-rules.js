/**
 * stepper-rules.js: the arithmetic of stepping a value. No DOM.
 */

/**
 * @typedef {Object} Scale
 * @property {number} min
 * @property {number} max
 * @property {number} step  above 0
 * @property {number} [customaryStart]  where a value that is not set yet begins; else at `min`
 */

/**
 * @param {number | null} value null while not set
 * @param {Scale} scale
 * @param {number} steps how many, down if negative
 * @returns {number} on the scale's grid (min + whole steps) unless the value already lay between two of its steps
 */
export function stepped(value, scale, steps) {
  if (value === null || value === undefined) return scale.customaryStart ?? scale.min;
  const position = (value - scale.min) / scale.step;
  const onGrid = Math.abs(position - Math.round(position)) < 1e-6;
  // Off the grid, the first step goes to the neighbouring mark, as a finger would.
  const next = onGrid
    ? Math.round(position) + steps
    : (steps > 0 ? Math.floor(position) : Math.ceil(position)) + steps;
  return within(tidy(scale.min + next * scale.step), scale);
}

/** @param {number} value @param {Scale} scale */
export function within(value, scale) {
  return Math.min(scale.max, Math.max(scale.min, value));
}

/** 0.1 + 0.2 is 0.3 here. @param {number} value */
export function tidy(value) {
  return Number(value.toFixed(9));
}

/** Milliseconds until the next repeat while held: slow at first, then quicker. @param {number} repeats so far, from 0 */
export function pauseWhileHeld(repeats) {
  if (repeats === 0) return 420;
  return repeats < 8 ? 130 : 60;
}
