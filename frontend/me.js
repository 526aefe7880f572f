/**
 * me.js: who uses this tab, which notebooks they may open, and what they may do in the one it shows.
 *
 *   await arrive();            // once for each page, before it is drawn
 *   await meet();              // asked again while it is open, as when the notebook says "reading only"
 *   if (mayWrite()) …
 */
import { get } from './api.js';
import { adoptDrafts } from './drafts.js';
import { askWords, mayWriteAs } from './people-rules.js';
import { showNotebook, shownNotebook } from './tab-notebook.js';

/** A page is drawn without knowing, rather than not at all. */
const PATIENCE_MILLIS = 5_000;

/** @type {import('./people-rules.js').Me | null} */
let known = null;

/** The last answer; null while there is none. */
export function me() {
  return known;
}

/** Whether saving is offered. */
export function mayWrite() {
  return mayWriteAs(known);
}

/** For whoever may only read: why nothing is saved, and whom to ask. */
export function readingOnlyWords() {
  return `You may read this notebook, not write in it. ${askWords(known?.notebook)}`;
}

/** Asks who is here. What goes wrong is left to whatever is asked next. */
export async function meet() {
  try {
    known = await ask();
    tell();
  } catch {
    // The page is drawn without knowing.
  }
}

/**
 * Asks who is here before a page is drawn. Where the notebook of this tab is gone or closed to this player, the page shows another one;
 * what was written for it stays on this device, under its own name. An open page never moves: its sheets belong to its notebook.
 *
 * @returns {Promise<string>} a sentence the player must know, or ''
 */
export async function arrive() {
  await meet();
  if (!known || known.notebook || !shownNotebook()) return '';
  showNotebook('');
  await meet();
  return known.notebook ? `The notebook of this tab is not open to you any more. This is “${known.notebook.title}”.` : '';
}

async function ask() {
  const answer = await get('/api/me', {}, AbortSignal.timeout(PATIENCE_MILLIS));
  if (answer.notebook) {
    showNotebook(answer.notebook.id);
    adoptDrafts(answer.notebook.id);
  }
  return answer;
}

/** Hears of every answer. @param {() => void} listener */
export function onMe(listener) {
  document.addEventListener('changeMe', listener);
}

function tell() {
  document.dispatchEvent(new Event('changeMe'));
}
