/**
 * recordings.js: takes recorded in this browser, kept here (IndexedDB) until the notebook has them. Each page sees those of its
 * own notebook, and those that were kept before it was noted which.
 *
 *   await keepRecording({ id, startedAt, strings, messages });
 *   for (const recording of await allRecordings()) …
 *   await dropRecording(id);
 */
import { shownNotebook } from './tab-notebook.js';

const NAME = 'rosinbook-recordings';
const STORE = 'recordings';

function open() {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore(STORE, { keyPath: 'id' });
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

async function within(mode, work) {
  const database = await open();
  try {
    return await new Promise((resolve, reject) => {
      const transaction = database.transaction(STORE, mode);
      const request = work(transaction.objectStore(STORE));
      transaction.oncomplete = () => resolve(request.result);
      transaction.onerror = () => reject(transaction.error);
      transaction.onabort = () => reject(transaction.error);
    });
  } finally {
    database.close();
  }
}

/** @typedef {{ id: string, startedAt: string, strings: string[], messages: import('./smf-rules.js').Message[], notebook?: string }} Recording */

/** @param {Recording} recording */
export function keepRecording(recording) {
  return within('readwrite', (store) => store.put({ ...recording, notebook: shownNotebook() }));
}

/** Oldest first. @returns {Promise<Recording[]>} empty where the browser keeps nothing */
export async function allRecordings() {
  try {
    const all = await within('readonly', (store) => store.getAll());
    return all.filter(({ notebook }) => !notebook || notebook === shownNotebook()).sort((one, other) => one.startedAt.localeCompare(other.startedAt));
  } catch {
    return [];
  }
}

/** @param {string} id */
export function dropRecording(id) {
  return within('readwrite', (store) => store.delete(id));
}
