/**
 * status-line.js: one quiet sentence at the foot of the page that a screen reader also hears. It goes by itself;
 * whatever the player must still know later belongs on the page instead.
 */

const STAYS_MILLIS = 6_000;
let leaving = 0;

/** @param {string} words */
export function say(words) {
  const line = document.getElementById('status-line');
  line.textContent = words;
  clearTimeout(leaving);
  leaving = setTimeout(() => {
    line.textContent = '';
  }, STAYS_MILLIS);
}
