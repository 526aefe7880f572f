/**
 * drafts.js: keeps what was typed on this device until the notebook has it, also when the phone locks.
 * Each page sees the drafts of its own notebook only.
 * A store that is full or switched off is no error here: `keepDraft` says so by returning false.
 */
import { draftKey, isDraftKey, readDraft, same } from './drafts-rules.js';
import { shownNotebook } from './tab-notebook.js';

/** @param {import('./drafts-rules.js').Draft} draft @returns {boolean} whether this device could keep it */
export function keepDraft(draft) {
  try {
    localStorage.setItem(keyOf(draft.kind, draft.id), JSON.stringify(draft));
    tell();
    return true;
  } catch {
    return false;
  }
}

/** @returns {import('./drafts-rules.js').Draft | null} */
export function findDraft(kind, id) {
  try {
    return readDraft(localStorage.getItem(keyOf(kind, id)));
  } catch {
    return null;
  }
}

/** The newest draft of a sheet of this kind that was never saved; what only waits for the notebook is no longer being written. */
export function findNewDraft(kind) {
  return allDrafts().find((draft) => draft.kind === kind && draft.baseRevision === 0 && !draft.wanted) ?? null;
}

/** The newest rehearsal that is not written down: the draft of a rig, with the entry for the log beside it. */
export function findRehearsal() {
  return allDrafts().find((draft) => draft.extra.log) ?? null;
}

/**
 * Drops a draft: the notebook has it, or the player threw it away. What another tab has kept in its place stays.
 *
 * @param {import('./drafts-rules.js').Draft} draft as it was kept
 */
export function dropDraft(draft) {
  if (!same(findDraft(draft.kind, draft.id), draft)) return;
  try {
    localStorage.removeItem(keyOf(draft.kind, draft.id));
    tell();
  } catch {
    // A store that is switched off has nothing to drop.
  }
}

/** Hears of every draft that is kept or dropped on this page. @param {() => void} listener */
export function onDraftsChange(listener) {
  document.addEventListener('changeDrafts', listener);
}

function tell() {
  document.dispatchEvent(new Event('changeDrafts'));
}

/** Everything on this device that the notebook does not have, newest first. */
export function allDrafts() {
  try {
    return Object.keys(localStorage)
      .filter((key) => isDraftKey(shownNotebook(), key))
      .map((key) => readDraft(localStorage.getItem(key)))
      .filter((draft) => draft !== null)
      .sort((one, other) => other.touchedAt.localeCompare(one.touchedAt));
  } catch {
    return [];
  }
}

/**
 * Drafts of no notebook were kept before there were several, or while the notebook was away: they belong to this one.
 *
 * @param {string} notebook its id
 */
export function adoptDrafts(notebook) {
  try {
    for (const key of Object.keys(localStorage).filter((each) => isDraftKey('', each))) adopt(notebook, key);
  } catch {
    // A store that is switched off holds none.
  }
}

function adopt(notebook, key) {
  const draft = readDraft(localStorage.getItem(key));
  if (!draft) return;
  const place = draftKey(notebook, draft.kind, draft.id);
  const there = readDraft(localStorage.getItem(place));
  if (!there || there.touchedAt < draft.touchedAt) localStorage.setItem(place, JSON.stringify(draft));
  localStorage.removeItem(key);
}

function keyOf(kind, id) {
  return draftKey(shownNotebook(), kind, id);
}

/**
 * Keeps what was typed of a meter's readings at the level bench, which is in no sheet.
 *
 * @param {string} rig its id
 * @param {Record<string, string>} readings what stands in each field that is not empty
 */
export function keepReadings(rig, readings) {
  try {
    if (Object.keys(readings).length) localStorage.setItem(readingsKey(rig), JSON.stringify(readings));
    else localStorage.removeItem(readingsKey(rig));
  } catch {
    // Without a store they last as long as the page.
  }
}

/** @param {string} rig its id @returns {Record<string, string>} */
export function keptReadings(rig) {
  try {
    const entries = Object.entries(JSON.parse(localStorage.getItem(readingsKey(rig)) ?? '{}'));
    return Object.fromEntries(entries.filter(([, words]) => typeof words === 'string'));
  } catch {
    return {};
  }
}

function readingsKey(rig) {
  return `rosinbook.readings@${shownNotebook()}.${rig}`;
}

/** The name the player signs with on this device. */
export function playerName() {
  try {
    return localStorage.getItem('rosinbook.player') ?? '';
  } catch {
    return '';
  }
}

/** @param {string} name */
export function rememberPlayerName(name) {
  try {
    localStorage.setItem('rosinbook.player', name.trim().slice(0, 100));
  } catch {
    // Without a store the name lasts as long as the page.
  }
}
