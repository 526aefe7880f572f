/**
 * places-rules.js: which address shows which page, and the address of each sheet. No DOM.
 * Every address is an ordinary link; the server answers all of them with the same shell.
 */

/**
 * @typedef {Object} Place
 * @property {string} page   module in pages/, e.g. "rig" for pages/rig.js (and pages/rig.css)
 * @property {string} room   which word of the navigation it belongs to
 * @property {Record<string, string>} params  such as { id }
 * @property {string} makes  kind of the sheet that the page is there to make; empty for every other page
 * @property {URLSearchParams} query
 */

/** Pattern, page, room. The first that fits wins. */
const PLACES = [
  ['/', 'tonight', 'tonight'],
  ['/tonight', 'tonight', 'tonight'],
  ['/pieces', 'pieces', 'pieces'],
  ['/pieces/:id', 'piece', 'pieces'],
  ['/recipes', 'recipes', 'recipes'],
  ['/recipes/:id', 'recipe', 'recipes'],
  ['/setlists', 'setlists', 'setlists'],
  ['/setlists/compare', 'setlist-comparison', 'setlists'],
  ['/setlists/:id', 'setlist', 'setlists'],
  ['/rigs', 'rigs', 'rigs'],
  ['/rigs/:id', 'rig', 'rigs'],
  ['/levels', 'levels', 'levels'],
  ['/levels/:id', 'level-bench', 'levels'],
  ['/instruments/:id', 'instrument', 'rigs'],
  ['/synths/:id', 'synth', 'rigs'],
  ['/wiring', 'wiring', 'wiring'],
  ['/wiring/:rigId', 'wiring-bench', 'wiring'],
  ['/log', 'log', 'log'],
  ['/takes', 'takes', 'takes'],
  ['/takes/live', 'live-take', 'takes'],
  ['/takes/:id', 'take', 'takes'],
  ['/exercise', 'exercise', 'takes'],
  ['/shares', 'shares', 'shares'],
  ['/people', 'people', 'people'],
  ['/compare/:kind/:id', 'compare', 'compare'],
  ['/stage/:setlistId', 'stage', 'setlists'],
  ['/new/log', 'log-rehearsal', 'log'],
  ['/new/instruments', 'new-instrument', 'rigs'],
  ['/new/synths', 'new-synth', 'rigs'],
  ['/new/rigs', 'new-rig', 'rigs'],
  ['/new/pieces', 'new-piece', 'pieces'],
  ['/new/recipes', 'new-recipe', 'recipes'],
  ['/new/setlists', 'new-setlist', 'setlists'],
];

/** The words of the navigation, in order: [room, address, word]. */
export const ROOMS = [
  ['tonight', '/', 'Tonight'],
  ['setlists', '/setlists', 'Sets'],
  ['pieces', '/pieces', 'Pieces'],
  ['recipes', '/recipes', 'Recipes'],
  ['rigs', '/rigs', 'Rigs'],
  ['log', '/log', 'Log'],
];

/** Rooms that are visited less often. */
export const FURTHER_ROOMS = [
  ['wiring', '/wiring', 'Wiring bench'],
  ['takes', '/takes', 'Take bench'],
  ['shares', '/shares', 'Shares'],
  ['levels', '/levels', 'Level bench'],
  ['people', '/people', 'People'],
];

/** What an address names within its page; empty if nothing, or nothing that can be read. @param {string} hash "#…" */
export function anchorOf(hash) {
  return decoded(hash.slice(1));
}

/**
 * @param {{ pathname: string, search: string }} location
 * @returns {Place | null} null if there is no such page
 */
export function placeOf(location) {
  const steps = location.pathname.split('/').filter(Boolean).map(decoded);
  for (const [pattern, page, room] of PLACES) {
    const params = matched(pattern.split('/').filter(Boolean), steps);
    if (params) return { page, room, params, makes: pattern.startsWith('/new/') ? pattern.slice(5) : '', query: new URLSearchParams(location.search) };
  }
  return null;
}

function matched(pattern, steps) {
  if (pattern.length !== steps.length) return null;
  const params = {};
  for (const [index, part] of pattern.entries()) {
    if (part.startsWith(':')) params[part.slice(1)] = steps[index];
    else if (part !== steps[index]) return null;
  }
  return params;
}

function decoded(step) {
  try {
    return decodeURIComponent(step);
  } catch {
    return step;
  }
}

/**
 * Address of a sheet's page. Log entries have no page of their own: the log opens at the entry.
 *
 * @param {string} kind plural, such as "rigs"
 * @param {string} id
 * @param {number} [revision] an earlier state of it
 */
export function sheetAddress(kind, id, revision) {
  if (kind === 'log') return `/log#${encodeURIComponent(id)}`;
  return `/${kind}/${encodeURIComponent(id)}${revision ? `?revision=${revision}` : ''}`;
}

/** Address of the bench with this rig on it. @param {string} rigId */
export function wiringAddress(rigId) {
  return `/wiring/${encodeURIComponent(rigId)}`;
}

/** Address of the comparison of two revisions. @param {string} kind @param {string} id @param {number} was @param {number} now */
export function compareAddress(kind, id, was, now) {
  return `/compare/${kind}/${encodeURIComponent(id)}?was=${was}&now=${now}`;
}

/**
 * Address of the comparison of two setlists.
 *
 * @param {{ id: string, revision?: number }} was
 * @param {{ id: string, revision?: number }} now
 */
export function setlistComparisonAddress(was, now) {
  const spot = ({ id, revision }) => encodeURIComponent(revision ? `${id}@${revision}` : id);
  return `/setlists/compare?was=${spot(was)}&now=${spot(now)}`;
}

/** What one sheet of a kind is called. */
export const KIND_WORDS = {
  instruments: 'instrument',
  synths: 'synth',
  rigs: 'rig',
  pieces: 'piece',
  recipes: 'recipe',
  setlists: 'set',
  log: 'log entry',
  takes: 'take',
};
