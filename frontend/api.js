/**
 * api.js: talks to the notebook's server. Answers are plain objects; what goes wrong is thrown as one of two types:
 *
 *   Problem  the server answered and said no (RFC 9457): .status .type .title .detail .pointer and the whole .body
 *   Away     nobody answered (no network, server stopped, too slow): nothing is known about what was sent
 *
 * Every request says which notebook this tab shows. Whoever wants to know how each went listens with onAnswer.
 */
import { shownNotebook } from './tab-notebook.js';

const PATIENCE_MILLIS = 15_000;
/** For what takes long: a file on its way, or much to write. */
const LONG_PATIENCE_MILLIS = 150_000;

/** What the server refused, in its own words. */
export class Problem extends Error {
  /** @param {number} status @param {Record<string, any>} body */
  constructor(status, body) {
    super(body.detail || body.title || `The notebook answered with ${status}.`);
    this.name = 'Problem';
    this.status = status;
    this.type = typeof body.type === 'string' ? body.type.replace(/^.*\/problems\//, '') : 'about:blank';
    this.title = body.title ?? '';
    this.detail = body.detail ?? '';
    /** JSON Pointer into what was sent, or undefined. */
    this.pointer = body.pointer;
    this.body = body;
  }
}

/** The server could not be reached. */
export class Away extends Error {
  constructor() {
    super('The notebook is out of reach.');
    this.name = 'Away';
  }
}

/**
 * @typedef {Object} Envelope  one sheet as it was saved
 * @property {string} id
 * @property {string} kind
 * @property {string} title
 * @property {number} revision
 * @property {number} [parent]
 * @property {string} savedAt ISO instant, UTC
 * @property {string} savedBy
 * @property {string} reason
 * @property {any} content
 * @property {Record<string, any>} [extras]
 */

/** @param {string} path @param {Record<string, string | number | boolean | undefined | null>} [query] @param {AbortSignal} [signal] */
export function get(path, query, signal) {
  return ask('GET', address(path, query), { signal });
}

/** @param {string} path @param {unknown} [body] */
export function post(path, body = {}) {
  return ask('POST', path, { body });
}

/** A POST that the notebook may work at for a while. @param {string} path */
export function postLong(path) {
  return ask('POST', path, { body: {}, patienceMillis: LONG_PATIENCE_MILLIS });
}

/** A file as it is. @param {string} path @param {Blob} file @param {string} type */
export function postFile(path, file, type) {
  return ask('POST', path, { file, headers: { 'Content-Type': type }, patienceMillis: LONG_PATIENCE_MILLIS });
}

/** @param {string} path @param {unknown} body */
export function put(path, body) {
  return ask('PUT', path, { body });
}

/** @param {string} path */
export function remove(path) {
  return ask('DELETE', path, {});
}

/** @returns {Promise<{ items: Envelope[], next?: string }>} */
export function listSheets(kind, query, signal) {
  return get(`/api/${kind}`, query, signal);
}

/** Every sheet of a kind, page after page, up to `most`. @returns {Promise<Envelope[]>} */
export async function allSheets(kind, query = {}, most = 1000) {
  const items = [];
  let after;
  do {
    const page = await listSheets(kind, { limit: 200, ...query, after });
    items.push(...page.items);
    after = page.next;
  } while (after && items.length < most);
  return items;
}

/** @returns {Promise<Envelope>} the newest revision, or the one named */
export function readSheet(kind, id, revision) {
  const sheet = `/api/${kind}/${encodeURIComponent(id)}`;
  return get(revision ? `${sheet}/revisions/${revision}` : sheet);
}

/**
 * A new sheet. The id is made here, so that sending it twice is harmless.
 *
 * @param {{ id: string, content: any, reason?: string, by?: string, log?: any }} body
 * @returns {Promise<Envelope>}
 */
export function createSheet(kind, body) {
  return post(`/api/${kind}`, body);
}

/**
 * A new revision on top of the one the edit began with.
 *
 * @param {number} revision what the edit began with
 * @param {{ content: any, reason?: string, by?: string, log?: any, stayPinned?: string[] }} body
 * @returns {Promise<Envelope>}
 */
export function saveSheet(kind, id, revision, body) {
  return ask('PUT', `/api/${kind}/${encodeURIComponent(id)}`, { body, headers: { 'If-Match': `"r${revision}"` } });
}

/** A POST that needs to know the revision it acts on: restore, played. @returns {Promise<Envelope>} */
export function actOnSheet(path, revision, body = {}) {
  return ask('POST', path, { body, headers: { 'If-Match': `"r${revision}"` } });
}

/** Hears how each request went that was answered. @param {(problem: Problem | null) => void} listener null if all is well */
export function onAnswer(listener) {
  document.addEventListener('answer', (event) => listener(/** @type {CustomEvent} */ (event).detail));
}

function tell(problem) {
  document.dispatchEvent(new CustomEvent('answer', { detail: problem }));
}

function address(path, query = {}) {
  const given = Object.entries(query).filter(([, value]) => value !== undefined && value !== null && value !== '');
  return given.length ? `${path}?${new URLSearchParams(given.map(([key, value]) => [key, String(value)]))}` : path;
}

async function ask(method, path, { body, file, headers = {}, signal, patienceMillis = PATIENCE_MILLIS }) {
  const patience = AbortSignal.timeout(patienceMillis);
  let response;
  let text;
  try {
    response = await fetch(path, {
      method,
      headers: { Accept: 'application/json', ...ofNotebook(), ...(body === undefined ? {} : { 'Content-Type': 'application/json' }), ...headers },
      body: file ?? (body === undefined ? undefined : JSON.stringify(body)),
      signal: signal ? AbortSignal.any([signal, patience]) : patience,
      credentials: 'same-origin',
      cache: 'no-cache',
    });
    text = await response.text();
  } catch (failure) {
    if (signal?.aborted) throw failure;
    throw new Away();
  }
  return answered(response.status, text);
}

/**
 * What an answer holds, whichever way it was asked for; whoever listens hears how it went.
 *
 * @param {number} status
 * @param {string} text
 * @throws {Problem | Away}
 */
export function answered(status, text) {
  const answer = parsed(text);
  if (status >= 200 && status < 300) {
    // A page of somebody in between, such as the sign-in of a venue's network.
    if (answer === undefined) throw new Away();
    tell(null);
    return answer;
  }
  // A gateway that stands in for a stopped server has no problem document to show; one that stops or misses its database is as good as away.
  const isAway = !answer?.type || ['/problems/database-away', '/problems/stopping'].includes(answer.type);
  if ([502, 503, 504].includes(status) && isAway) throw new Away();
  const problem = new Problem(status, answer ?? {});
  tell(problem);
  throw problem;
}

/** Headers of every request: which notebook this tab shows. @returns {Record<string, string>} */
export function ofNotebook() {
  const id = shownNotebook();
  return id ? { 'Rosinbook-Notebook': id } : {};
}

/** @returns {any} null if there is nothing, undefined if it is no JSON */
function parsed(text) {
  if (!text) return null;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
