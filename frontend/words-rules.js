/**
 * words-rules.js: how things are written out, the same on every page. No DOM.
 */

const DAY = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
const SHORT_DAY = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });

const WHOLE = new Intl.NumberFormat('en', { useGrouping: false, maximumFractionDigits: 0, signDisplay: 'negative' });
const BROKEN = new Intl.NumberFormat('en', { useGrouping: false, maximumSignificantDigits: 6, signDisplay: 'negative' });

/** "Thursday 26 November 2026". @param {string | undefined} isoDate "2026-11-26" @returns {string} empty if there is none */
export function longDay(isoDate) {
  return isoDate ? DAY.format(new Date(`${isoDate.slice(0, 10)}T00:00:00Z`)).replace(',', '') : '';
}

/** "26 Nov 2026". @param {string | undefined} isoDate @returns {string} empty if there is none */
export function shortDay(isoDate) {
  return isoDate ? SHORT_DAY.format(new Date(`${isoDate.slice(0, 10)}T00:00:00Z`)) : '';
}

/** "26 Nov 2026, 20:31" in the reader's own time. @param {string | undefined} instant ISO, UTC */
export function moment(instant) {
  if (!instant) return '';
  const at = new Date(instant);
  return `${shortDay(localDay(at))}, ${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** The reader's calendar day as "2026-11-26". @param {Date} at */
export function localDay(at) {
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

/**
 * "tonight", "tomorrow", "in 3 days", "yesterday", "12 days ago".
 *
 * @param {string} isoDate
 * @param {string} today ISO date
 */
export function dayFrom(isoDate, today) {
  const days = Math.round((Date.parse(`${isoDate}T00:00:00Z`) - Date.parse(`${today}T00:00:00Z`)) / 86_400_000);
  if (days === 0) return 'tonight';
  if (days === 1) return 'tomorrow';
  if (days === -1) return 'yesterday';
  return days > 0 ? `in ${days} days` : `${-days} days ago`;
}

/** "20", "−1.5": no exponent, no trailing zeros, a real minus. @param {number} amount */
export function number(amount) {
  return (Number.isInteger(amount) ? WHOLE : BROKEN).format(amount).replace('-', '−');
}

/** "+2", "−1.5", "0". @param {number} difference */
export function signed(difference) {
  return difference > 0 ? `+${number(difference)}` : number(difference);
}

/** "B♭3", "F♯4". @param {string} note scientific pitch name in plain letters */
export function noteName(note) {
  return note.replace(/^([A-Ga-g])b/, '$1♭').replace('#', '♯');
}

/** "1 piece", "3 pieces". @param {number} count @param {string} one @param {string} [many] */
export function counted(count, one, many = `${one}s`) {
  return `${count} ${count === 1 ? one : many}`;
}

/** With a capital letter and a full stop. @param {string} words */
export function asSentence(words) {
  const whole = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.!?…]$/.test(whole) ? whole : `${whole}.`;
}

/** "E, A and D". @param {string[]} words */
export function listed(words) {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/**
 * What a player typed, as a number: "1,5", "−3" and " 20 " are numbers.
 *
 * @param {string} typed
 * @returns {number | null} null if it is none
 */
export function parseNumber(typed) {
  const plain = typed.trim().replace('−', '-').replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** A key for a new voice, effect, pin or item, unlike all others. @param {() => string} [random] a UUID */
export function newKey(random = () => crypto.randomUUID()) {
  return random().replaceAll('-', '').slice(0, 12);
}

function two(amount) {
  return String(amount).padStart(2, '0');
}
