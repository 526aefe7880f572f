/** route-rules.js: how one pin reaches another, and what a route still lacks. No DOM. */
import { number, parseNumber } from '../words-rules.js';
import { ohmsWords } from './adapter-rules.js';
import { roleWords, synthRoleWords } from './connector-rules.js';

/** Everything that can stand between two pins, in the order it is offered: [via, words]. */
export const WAYS = [
  ['straight', 'straight'],
  ['preamp', 'preamp'],
  ['resistor', 'resistor'],
  ['divider', 'divider'],
  ['switch', 'switch'],
  ['tied', 'tied to ground'],
  ['open', 'left open'],
];

/** What can stand behind one position of a switch. */
export const WAYS_OF_A_SWITCH = WAYS.filter(([way]) => way !== 'switch');

/**
 * "4.7 kΩ", "4k7", "1M", "220" as ohms.
 *
 * @param {string} typed
 * @returns {number | null} null if it is no resistance above 0
 */
export function parseOhms(typed) {
  const plain = typed.trim().replace(/\s*(Ω|ohms?|R)$/i, '').replace(/\s+/g, '');
  const infix = /^(\d+)([kKM])(\d+)$/.exec(plain);
  const [figures, letter] = infix ? [`${infix[1]}.${infix[3]}`, infix[2]] : [plain.replace(/[kKM]$/, ''), /[kKM]$/.exec(plain)?.[0]];
  const amount = parseNumber(figures);
  if (amount === null) return null;
  const ohms = amount * (letter === 'M' ? 1e6 : letter ? 1e3 : 1);
  return ohms > 0 && ohms <= 1e12 ? Number(ohms.toPrecision(12)) : null;
}

/**
 * A way as it begins when it is picked.
 *
 * @param {string} way
 * @param {{ supplyPins?: string[], isFromInstrument?: boolean }} around the synth's supply pins
 */
export function newWay(way, { supplyPins = [], isFromInstrument = false } = {}) {
  const supply = supplyPins.length ? { supplyPin: supplyPins[0] } : {};
  if (way === 'preamp') return { via: way, gainDecibels: 12, supplyMilliamps: 0.5, ...supply };
  if (way === 'resistor') return { via: way, ohms: 10_000 };
  if (way === 'divider') return { via: way, upperOhms: 10_000, lowerOhms: 10_000, ...(isFromInstrument ? {} : supply) };
  if (way === 'switch') return { via: way, positions: { on: isFromInstrument ? { via: 'straight' } : newWay('divider', { supplyPins }), off: { via: 'open' } } };
  if (way === 'tied') return { via: way, ohms: 0 };
  return { via: way };
}

/**
 * The same route through something else; a pin that such a route cannot have is let go.
 *
 * @param {any} route
 * @param {string} way
 * @param {string[]} supplyPins of the synth
 */
export function withWay({ instrumentPin, synthPin }, way, supplyPins) {
  const isFromInstrument = instrumentPin !== undefined;
  const via = newWay(way, { supplyPins, isFromInstrument });
  const concernsOne = way === 'tied' || way === 'open';
  return {
    ...(isFromInstrument && !(concernsOne && synthPin !== undefined) ? { instrumentPin } : {}),
    ...(synthPin === undefined ? {} : { synthPin }),
    via,
  };
}

/**
 * What a route still lacks before it can be checked and kept.
 *
 * @param {any} route
 * @returns {string | null} a sentence, or null if it is whole
 */
export function missingInRoute({ instrumentPin, synthPin, via = { via: 'straight' } }) {
  if (via.via === 'switch') {
    if (Object.keys(via.positions).length < 2) return 'A switch needs two positions.';
    return Object.values(via.positions).map((each) => missingOnTheWay(instrumentPin, synthPin, each, true)).find(Boolean) ?? null;
  }
  return missingOnTheWay(instrumentPin, synthPin, via, false);
}

function missingOnTheWay(instrumentPin, synthPin, via, isSwitched) {
  if (via.via === 'tied' || via.via === 'open') {
    if (instrumentPin === undefined && synthPin === undefined) return 'Say which pin.';
    return instrumentPin !== undefined && synthPin !== undefined && !isSwitched ? 'Only one pin can be tied or left open: take the other off.' : null;
  }
  if (synthPin === undefined) return 'Say which pin of the synth it ends at.';
  if (via.via === 'divider') {
    if (instrumentPin === undefined && via.supplyPin === undefined) return 'Say which supply pin is divided.';
    return instrumentPin !== undefined && via.supplyPin !== undefined && !isSwitched ? 'A divider has one source: the supply pin or the instrument pin, not both.' : null;
  }
  return instrumentPin === undefined ? 'Say which pin of the instrument it starts at.' : null;
}

/** The first route that is not whole, told with its name. @param {any} [adapter] @returns {string | null} */
export function missingInAdapter(adapter) {
  for (const [id, route] of Object.entries(adapter?.routes ?? {})) {
    const missing = missingInRoute(route);
    if (missing) return `Route “${id}”: ${missing}`;
  }
  return null;
}

/** Without the routes that are not whole yet, so that the rest can be checked. @param {any} adapter */
export function wholeRoutes(adapter) {
  return { ...adapter, routes: Object.fromEntries(Object.entries(adapter?.routes ?? {}).filter(([, route]) => !missingInRoute(route))) };
}

/** A name for a new route that no other has. @param {Record<string, any>} routes */
export function newRouteId(routes) {
  let count = Object.keys(routes).length + 1;
  while (Object.hasOwn(routes, `route-${count}`)) count++;
  return `route-${count}`;
}

/**
 * "pin 4, string 2"; on the synth "pin 4, input 2".
 *
 * @param {string | undefined} label
 * @param {any} connector
 * @param {boolean} [isSynths]
 */
export function pinWords(label, connector, isSynths = false) {
  if (label === undefined) return 'no pin';
  const role = connector?.pins?.[label]?.role;
  if (!role) return `pin ${label}, not in the table`;
  return `pin ${label}, ${isSynths ? synthRoleWords(role) : roleWords(role)}`;
}

/** What stands in the way, with every value. @param {any} via */
export function wayWords(via = { via: 'straight' }) {
  switch (via.via) {
    case 'preamp':
      return `preamp ${via.gainDecibels < 0 ? '' : '+'}${number(via.gainDecibels)} dB${via.supplyMilliamps ? `, ${number(via.supplyMilliamps)} mA` : ', own battery'}`;
    case 'resistor':
      return `resistor ${ohmsWords(via.ohms)}`;
    case 'divider':
      return `divider ${ohmsWords(via.upperOhms)} over ${ohmsWords(via.lowerOhms)}`;
    case 'switch':
      return `switch: ${Object.entries(via.positions).map(([position, each]) => `${position} ${wayWords(each)}`).join('; ')}`;
    case 'tied':
      return via.ohms ? `tied to ground by ${ohmsWords(via.ohms)}` : 'tied to ground';
    default:
      return WAYS.find(([way]) => way === via.via)?.[1] ?? String(via.via);
  }
}

/**
 * Pins of a connector that no route speaks of.
 *
 * @param {any} adapter
 * @param {any} connector
 * @param {'instrumentPin' | 'synthPin'} end
 * @returns {string[]} labels
 */
export function unjoined(adapter, connector, end) {
  const spoken = new Set();
  for (const route of Object.values(adapter?.routes ?? {})) {
    spoken.add(route[end]);
    if (end === 'synthPin') for (const via of [route.via, ...Object.values(route.via?.positions ?? {})]) spoken.add(via?.supplyPin).add(via?.negativeSupplyPin);
  }
  return Object.keys(connector?.pins ?? {}).filter((label) => !spoken.has(label));
}

/** The control line a pin belongs to. @param {any} connector @param {string | undefined} label */
export function lineOf(connector, label) {
  const role = connector?.pins?.[label]?.role;
  return role?.carries === 'control' || role?.carries === 'switch' ? role.line : undefined;
}
