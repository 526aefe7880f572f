/**
 * recipe-rules.js: a recipe over its starting point. A recipe that follows one holds a JSON Merge Patch (RFC 7396) with
 * only what differs; here it is laid over, read, edited and given back. No DOM; nothing given is altered.
 *
 * Settings: { straight: { on, parameters }, voices: { id: { name, order, on, parameters } },
 * effects: { id: { type, order, on, parameters } }, slot, notes }. They hold no null: in a patch, null leaves out.
 */
import { same } from './drafts-rules.js';
import { pointerSteps, read, write } from './save-rules.js';

/** What a recipe begins with that stands alone. */
export function blankSettings() {
  return { straight: { on: true, parameters: {} }, voices: {}, effects: {}, slot: '', notes: '' };
}

/**
 * Lays a patch over a document (RFC 7396, section 2).
 *
 * @param {any} target undefined if there is nothing yet
 * @param {any} patch
 * @returns {any}
 */
export function mergePatch(target, patch) {
  if (!isObject(patch)) return structuredClone(patch);
  const result = isObject(target) ? structuredClone(target) : {};
  for (const [key, value] of Object.entries(patch)) {
    if (value === null) delete result[key];
    else define(result, key, mergePatch(own(result, key), value));
  }
  return result;
}

/**
 * The smallest patch that makes one document into another: mergePatch(from, diffPatch(from, to)) is `to`.
 *
 * @param {any} from
 * @param {any} to holds no null, since a patch cannot write one
 * @returns {any} {} if they are the same
 */
export function diffPatch(from, to) {
  if (!isObject(to)) return structuredClone(to);
  if (!isObject(from)) return structuredClone(to);
  const patch = {};
  for (const key of Object.keys(from)) if (!Object.hasOwn(to, key)) define(patch, key, null);
  for (const [key, value] of Object.entries(to)) {
    if (same(own(from, key), value) && Object.hasOwn(from, key)) continue;
    define(patch, key, diffPatch(own(from, key), value));
  }
  return patch;
}

/**
 * The patch after an edit of the whole. What the recipe held as its own stays its own, also where the starting point has
 * come to say the same.
 *
 * @param {any} start the starting point's settings
 * @param {any} patch
 * @param {(whole: any) => void} edit changes the whole settings in place
 */
export function editedPatch(start, patch, edit) {
  const before = mergePatch(start, patch);
  const whole = structuredClone(before);
  edit(whole);
  const next = diffPatch(start, whole);
  for (const pointer of leaves(patch)) {
    const value = read(patch, pointer);
    const untouched = same(read(whole, pointer), read(before, pointer));
    if (untouched && value !== null && read(next, pointer) === undefined && same(read(whole, pointer), value)) write(next, pointer, value);
  }
  return next;
}

/**
 * The patch without its own say on a place: the starting point's value holds there again.
 *
 * @param {any} patch
 * @param {string} pointer a value, or a whole voice or effect
 */
export function givenBack(patch, pointer) {
  const next = structuredClone(patch);
  if (read(next, pointer) === undefined) return next;
  write(next, pointer, undefined);
  const steps = pointerSteps(pointer);
  // An object that has become empty would still say "make sure this exists".
  for (let depth = steps.length - 1; depth > 0; depth--) {
    const parent = `/${steps.slice(0, depth).map(escaped).join('/')}`;
    if (Object.keys(read(next, parent) ?? { full: 0 }).length > 0) break;
    write(next, parent, undefined);
  }
  return next;
}

/**
 * Whether the recipe itself says what stands at a place of the whole settings.
 *
 * @param {any} patch
 * @param {string} pointer
 */
export function isOwn(patch, pointer) {
  let at = patch;
  for (const step of pointerSteps(pointer)) {
    if (!isObject(at)) return at !== undefined;
    if (!Object.hasOwn(at, step)) return false;
    at = at[step];
  }
  return true;
}

/** Whether the recipe says anything within a place. @param {any} patch @param {string} pointer */
export function hasOwnWithin(patch, pointer) {
  const value = read(patch, pointer);
  return value !== undefined && (!isObject(value) || leaves(value).length > 0);
}

/** Places of a starting point that a recipe leaves out, such as "/voices/low". @param {any} patch @returns {string[]} */
export function leftOut(patch) {
  return ['voices', 'effects'].flatMap((group) => Object.entries(patch[group] ?? {})
    .filter(([, value]) => value === null).map(([key]) => `/${group}/${escaped(key)}`));
}

/** Pointers to every value that is no object, and to empty objects. @returns {string[]} */
function leaves(value, at = '') {
  if (!isObject(value)) return [at];
  return Object.entries(value).flatMap(([key, child]) => leaves(child, `${at}/${escaped(key)}`));
}

/** One step of a JSON Pointer, written out (RFC 6901). @param {string} step */
export function escaped(step) {
  return step.replaceAll('~', '~0').replaceAll('/', '~1');
}

function own(object, key) {
  return Object.hasOwn(object, key) ? object[key] : undefined;
}

function define(object, key, value) {
  Object.defineProperty(object, key, { value, writable: true, enumerable: true, configurable: true });
}

function isObject(value) {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
