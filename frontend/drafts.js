/**
 * drafts.js: keeps what was typed on this device until the notebook has it, also when the phone locks.
 * A store that is full or switched off is no error here: `keepDraft` says so by returning false.
 */
import { draftKey, isDraftKey, readDraft } from './drafts-rules.js';

/** @param {import('./drafts-rules.js').Draft} draft @returns {boolean} whether this device could keep it */
export function keepDraft(draft) {
  try {
    localStorage.setItem(draftKey(draft.kind, draft.id), JSON.stringify(draft));
    tell();
    return true;
  } catch {
    return false;
  }
}

/** @returns {import('./drafts-rules.js').Draft | null} */
export function findDraft(kind, id) {
  try {
    return readDraft(localStorage.getItem(draftKey(kind, id)));
  } catch {
    return null;
  }
}

/** The newest draft of a sheet of this kind that was never saved. */
export function findNewDraft(kind) {
  return allDrafts().find((draft) => draft.kind === kind && draft.baseRevision === 0) ?? null;
}

/** Drops a draft: the notebook has it, or the player threw it away. */
export function dropDraft(kind, id) {
  try {
    localStorage.removeItem(draftKey(kind, id));
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
      .filter(isDraftKey)
      .map((key) => readDraft(localStorage.getItem(key)))
      .filter((draft) => draft !== null)
      .sort((one, other) => other.touchedAt.localeCompare(one.touchedAt));
  } catch {
    return [];
  }
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
