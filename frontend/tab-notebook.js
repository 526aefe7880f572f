/**
 * tab-notebook.js: which notebook this tab shows. A tab keeps it while it is open, whatever another tab opens; a page keeps the one it
 * was drawn from, so that what was begun in one notebook is never saved into another.
 */
import { fileAddressIn } from './people-rules.js';

const KEY = 'rosinbook.notebook';
let ofPage = kept();

/** Id of the notebook that this page shows; empty while nobody has said which. */
export function shownNotebook() {
  return ofPage;
}

/** This page shows it, and so does every page of this tab from now on. @param {string} id */
export function showNotebook(id) {
  ofPage = id;
  showNextNotebook(id);
}

/** Every page that this tab opens from now on shows it; this page stays with its own. @param {string} id empty for none */
export function showNextNotebook(id) {
  try {
    if (id) sessionStorage.setItem(KEY, id);
    else sessionStorage.removeItem(KEY);
  } catch {
    // Without a store each page shows the notebook that was opened last.
  }
}

/** Address of a file that a plain link leads to: it can carry no header. @param {string} path below /api/ */
export function fileAddress(path) {
  return fileAddressIn(ofPage, path);
}

function kept() {
  try {
    return sessionStorage.getItem(KEY) ?? '';
  } catch {
    return '';
  }
}

// Going back may bring a page as it was, with the notebook it was drawn from.
addEventListener('pageshow', (event) => {
  if (event.persisted && ofPage) showNextNotebook(ofPage);
});
