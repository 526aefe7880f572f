/**
 * live-rules.js: judges notes while they arrive. No DOM, no clock: times come with the messages, in milliseconds.
 *
 * What can be told within the moment is less than the bench finds afterwards: it knows the past of a note, not its future.
 * The figures are those of the bench, rounded to round numbers: common practice, no source.
 */
import { noteNumber } from './take-rules.js';

const TOUCHING_MILLIS = 40;
const FLICKER_MILLIS = 60;
const MUCH_QUIETER = 25;
const FAR_QUIETER = 40;
const HARMONICS = [12, 19, 24];

/**
 * @typedef {{ string: number, note: number, velocity: number, on: number, off: number | null, flag: string, because: string }} LiveNote
 */

/**
 * @param {{ strings: Record<string, string>, baseChannel: number }} state open notes by number; the channel of string 1
 */
export function LiveWatch({ strings, baseChannel }) {
  const open = new Map(Object.entries(strings).map(([number, name]) => [Number(number), noteNumber(name)]));
  /** The newest note of each string. @type {Map<number, LiveNote>} */
  const newest = new Map();
  const before = new Map();

  return {
    newest,
    /**
     * @param {{ kind: 'on' | 'off', channel: number, note: number, velocity: number }} message
     * @param {number} at
     * @returns {LiveNote[]} notes that are new or about which something new is known
     */
    hear(message, at) {
      const string = message.channel - baseChannel + 1;
      if (!open.has(string)) return [];
      return message.kind === 'on' ? start(string, message, at) : end(string, message.note, at);
    },
  };

  function start(string, { note, velocity }, at) {
    const last = newest.get(string);
    const changed = [];
    if (last && last.off === null) last.off = at;
    /** @type {LiveNote} */
    const next = { string, note, velocity, on: at, off: null, flag: '', because: '' };
    if (last && isBlip(last, next, before.get(string))) {
      flag(last, 'blip', `${Math.round(last.off - last.on)} ms, then another note`);
      changed.push(last);
    }
    judge(next);
    if (!next.flag) changed.push(...leakedBefore(next));
    before.set(string, last);
    newest.set(string, next);
    return [...changed, next];
  }

  function end(string, note, at) {
    const last = newest.get(string);
    if (!last || last.note !== note || last.off !== null) return [];
    last.off = at;
    return [last];
  }

  /** Too short to be played, and either a harmonic of what follows or between two of the same note. */
  function isBlip(last, next, beforeLast) {
    if (last.flag || last.off - last.on > FLICKER_MILLIS || next.on - last.off > TOUCHING_MILLIS) return false;
    if (last.note !== next.note && HARMONICS.includes(Math.abs(last.note - next.note))) return true;
    return Boolean(beforeLast) && last.note !== next.note && beforeLast.note === next.note
      && beforeLast.off !== null && last.on - beforeLast.off <= TOUCHING_MILLIS;
  }

  function judge(next) {
    if (next.note < open.get(next.string)) flag(next, 'below the open string', 'the string cannot give it');
    for (const other of newest.values()) {
      if (other.string === next.string || !soundsAt(other, next.on) || other.flag === 'ghost') continue;
      if (leaks(next, other)) flag(next, 'ghost', `${other.velocity - next.velocity} quieter than string ${other.string}`);
    }
  }

  /** The leak may arrive a moment before the stroke that causes it. */
  function leakedBefore(source) {
    const found = [];
    for (const other of newest.values()) {
      const justNow = other.string !== source.string && source.on - other.on <= TOUCHING_MILLIS;
      if (justNow && other.flag !== 'ghost' && other.flag !== 'blip' && leaks(other, source)) {
        flag(other, 'ghost', `${source.velocity - other.velocity} quieter than string ${source.string}`);
        found.push(other);
      }
    }
    return found;
  }

  function soundsAt(note, at) {
    return note.off === null || at - note.off <= TOUCHING_MILLIS;
  }

  function leaks(quiet, loud) {
    const quieter = loud.velocity - quiet.velocity;
    const interval = Math.abs(loud.note - quiet.note);
    return quieter >= FAR_QUIETER || (quieter >= MUCH_QUIETER && (interval === 0 || HARMONICS.includes(interval)));
  }

  function flag(note, word, because) {
    note.flag = word;
    note.because = because;
  }
}
