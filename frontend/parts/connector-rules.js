/** connector-rules.js: what a contact can carry, in words, and what is still missing to know it. No DOM. */
import { number } from '../words-rules.js';

/** Every role a contact can have, in the order they are offered: [carries, words]. Unknown is a proper role. */
export const ROLES = [
  ['unknown', 'not known yet'],
  ['string', 'a string'],
  ['mixed', 'mixed signal'],
  ['ground', 'ground'],
  ['supply', 'supply'],
  ['control', 'control line'],
  ['switch', 'switch line'],
  ['unused', 'unused'],
];

/** @param {any} role @returns {string} such as "string 2", "supply +7 V", "not known yet" */
export function roleWords(role) {
  if (role.carries === 'string') return `string ${role.string}`;
  if (role.carries === 'supply' && role.volts !== undefined) return `supply ${role.volts > 0 ? '+' : ''}${number(role.volts)} V`;
  if (role.carries === 'control' || role.carries === 'switch') return `${role.carries} line ${role.line}`;
  return ROLES.find(([carries]) => carries === role.carries)?.[1] ?? String(role.carries);
}

/** The same on the synth, where a string's pin is an input. @param {any} role */
export function synthRoleWords(role) {
  return role.carries === 'string' ? `input ${role.string}` : roleWords(role);
}

/**
 * A role as it begins when it is picked from the list.
 *
 * @param {string} carries
 * @param {{ takenStrings?: number[], lines?: string[] }} around what the other pins carry, and the synth's control lines
 */
export function newRole(carries, { takenStrings = [], lines = [] } = {}) {
  if (carries === 'string') {
    const free = Array.from({ length: 12 }, (_, index) => index + 1).find((each) => !takenStrings.includes(each));
    return { carries, string: free ?? 1 };
  }
  // No voltage is guessed: a wrong one would be believed.
  if (carries === 'control' || carries === 'switch') return { carries, line: lines[0] ?? '' };
  return { carries };
}

/**
 * What has to be written before the notebook can keep this connector.
 *
 * @param {any} [connector]
 * @returns {string | null} a sentence, or null if nothing is missing
 */
export function missingIn(connector) {
  for (const [label, { role }] of Object.entries(connector?.pins ?? {})) {
    if (role.carries === 'supply' && !role.volts) return `Pin ${label} is a supply: write its volts, or call it not known yet.`;
    if ((role.carries === 'control' || role.carries === 'switch') && !role.line) return `Pin ${label} is a ${role.carries} line: say which.`;
  }
  if (connector && Object.keys(connector.pins ?? {}).length === 0) return 'The connector has no pins yet: add one, or take the connector out.';
  return null;
}

/** Pin labels as a person counts: 2 before 10, numbers before words. @param {Record<string, any>} pins */
export function pinOrder(pins) {
  const isNumber = (label) => /^\d+$/.test(label);
  return Object.keys(pins).sort((one, other) => {
    if (isNumber(one) && isNumber(other)) return Number(one) - Number(other);
    if (isNumber(one) !== isNumber(other)) return isNumber(one) ? -1 : 1;
    return one.localeCompare(other);
  });
}

/** The label for the next pin. @param {Record<string, any>} pins */
export function nextPin(pins) {
  return String(Math.max(0, ...Object.keys(pins).filter((label) => /^\d+$/.test(label)).map(Number)) + 1);
}
