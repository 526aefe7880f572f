/**
 * drafts-rules.js: what a draft is, and whether something found in the browser's store is one. No DOM.
 */

export const FORMAT = 1;

/**
 * @typedef {Object} Draft  what was typed and is not yet in the notebook
 * @property {1} format
 * @property {string} kind
 * @property {string} id
 * @property {number} baseRevision  what the edit began with; 0 for a sheet that was never saved
 * @property {any} base      content the edit began with; null for a new sheet
 * @property {any} content   content as typed so far
 * @property {Record<string, any>} extra  sent beside the content, such as { log }
 * @property {string} reason
 * @property {string} touchedAt ISO instant of the last keystroke
 * @property {boolean} wanted   the player pressed save and the server has not answered yet
 */

/**
 * Where a draft lies in the store: the same sheet may stand in two notebooks.
 *
 * @param {string} notebook its id; empty while it is not known, as it was not before there were several
 * @param {string} kind
 * @param {string} id
 */
export function draftKey(notebook, kind, id) {
  return `${draftPrefix(notebook)}${kind}.${id}`;
}

/** Whether a draft of this notebook lies there. @param {string} notebook @param {string} key */
export function isDraftKey(notebook, key) {
  return key.startsWith(draftPrefix(notebook));
}

function draftPrefix(notebook) {
  return notebook ? `rosinbook.draft@${notebook}.` : 'rosinbook.draft.';
}

/**
 * Checks what lies in the store; somebody else may have written there.
 *
 * @param {string | null} text
 * @returns {Draft | null} null if it is no draft this release can read
 */
export function readDraft(text) {
  let found;
  try {
    found = JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
  const isDraft = isObject(found)
    && found.format === FORMAT
    && typeof found.kind === 'string'
    && typeof found.id === 'string'
    && Number.isInteger(found.baseRevision) && found.baseRevision >= 0
    && (found.baseRevision === 0 || isObject(found.base))
    && isObject(found.content)
    && isObject(found.extra)
    && typeof found.reason === 'string'
    && !Number.isNaN(Date.parse(found.touchedAt))
    && typeof found.wanted === 'boolean';
  return isDraft ? found : null;
}

/** Whether two contents say the same, whatever the order of their keys. */
export function same(one, other) {
  if (one === other) return true;
  if (Array.isArray(one) !== Array.isArray(other) || !isObjectOrList(one) || !isObjectOrList(other)) return false;
  const keys = definedKeys(one);
  return keys.length === definedKeys(other).length
    && keys.every((key) => Object.hasOwn(other, key) && same(one[key], other[key]));
}

// A key that is set to undefined is not written to JSON, so it is not there.
function definedKeys(value) {
  return Object.keys(value).filter((key) => value[key] !== undefined);
}

function isObject(value) {
  return isObjectOrList(value) && !Array.isArray(value);
}

function isObjectOrList(value) {
  return typeof value === 'object' && value !== null;
}
