/**
 * save-rules.js: what becomes of two edits of one place. No DOM.
 */
import { same } from './drafts-rules.js';

/**
 * @typedef {Object} Conflict  a place with two answers; a value that is absent was left out by that side
 * @property {string} pointer  JSON Pointer
 * @property {string[]} where  in the player's words
 * @property {any} [base]
 * @property {any} [theirs]
 * @property {any} [yours]
 * @property {string} [baseText]
 * @property {string} [theirsText]
 * @property {string} [yoursText]
 */

/**
 * The content to save after the player has chosen.
 *
 * @param {any} merged  the server's merge; it holds "theirs" wherever the edits touch
 * @param {Conflict[]} conflicts
 * @param {('yours' | 'theirs')[]} choices  one for each conflict
 * @returns {any} a new content; `merged` is left as it was
 */
export function withChoices(merged, conflicts, choices) {
  const content = structuredClone(merged);
  // The last places first: taking an entry out of a list must not move those still to come.
  for (let index = conflicts.length - 1; index >= 0; index--) {
    if (choices[index] === 'yours') write(content, conflicts[index].pointer, conflicts[index].yours);
  }
  return content;
}

/**
 * What was typed while a save was under way, on top of what the notebook made of that save.
 *
 * @param {any} sent
 * @param {any} typed  grown out of `sent`
 * @param {any} kept  what the notebook answered; it may hold somebody else's edits as well
 * @returns {any} a new content, or null if something was typed where `kept` has another value than was sent
 */
export function carriedOver(sent, typed, kept) {
  let touches = false;
  const content = structuredClone(carry(sent, typed, kept));
  return touches ? null : content;

  function carry(was, now, answered) {
    if (same(now, was)) return answered;
    if (same(answered, was) || same(answered, now)) return now;
    if ([was, now, answered].every((each) => typeof each === 'object' && each !== null && !Array.isArray(each))) {
      const keys = new Set([...Object.keys(answered), ...Object.keys(now)]);
      return Object.fromEntries([...keys].map((key) => [key, carry(own(was, key), own(now, key), own(answered, key))]).filter(([, value]) => value !== undefined));
    }
    touches = true;
    return now;
  }
}

function own(object, key) {
  return Object.hasOwn(object, key) ? object[key] : undefined;
}

/** Steps of a JSON Pointer (RFC 6901). @param {string} pointer @returns {string[]} */
export function pointerSteps(pointer) {
  if (pointer === '') return [];
  return pointer.slice(1).split('/').map((step) => step.replaceAll('~1', '/').replaceAll('~0', '~'));
}

/**
 * Reads a place.
 *
 * @param {any} content
 * @param {string} pointer
 * @returns {any} undefined if there is no such place
 */
export function read(content, pointer) {
  return pointerSteps(pointer).reduce(
    (at, step) => (typeof at === 'object' && at !== null && Object.hasOwn(at, step) ? at[step] : undefined), content);
}

/**
 * Writes a place, with whatever is missing on the way; an undefined value takes the place out.
 *
 * @param {any} content changed in place
 * @param {string} pointer not the whole document
 * @param {any} value
 */
export function write(content, pointer, value) {
  const steps = pointerSteps(pointer);
  const last = steps.pop();
  if (last === undefined) throw new RangeError('the whole document cannot be written by pointer');
  let at = content;
  for (const step of steps) {
    // Object.hasOwn, not plain reading: a key such as "__proto__" must never reach a prototype.
    if (!Object.hasOwn(at, step) || typeof at[step] !== 'object' || at[step] === null) define(at, step, {});
    at = at[step];
  }
  if (value === undefined) Array.isArray(at) ? at.splice(Number(last), 1) : delete at[last];
  else define(at, last, value);
}

function define(object, key, value) {
  Object.defineProperty(object, key, { value, writable: true, enumerable: true, configurable: true });
}

/**
 * @typedef {'clean' | 'draft' | 'sending' | 'saved' | 'merged' | 'away' | 'refused' | 'conflict'} SaveState
 */

/** How long to wait before asking a server that is away again. @param {number} attempt from 0 */
export function pauseMillis(attempt) {
  return Math.min(60_000, 3_000 * 2 ** Math.min(attempt, 10));
}
