/** connector-rules.js: what a contact can carry, in words. No DOM. */

/** Every role a contact can have, in the order they are offered: [carries, words]. */
export const ROLES = [
  ['unknown', 'unknown'],
  ['string', 'a string'],
  ['mixed', 'mixed signal'],
  ['ground', 'ground'],
  ['supply', 'supply'],
  ['control', 'control voltage'],
  ['switch', 'switch'],
  ['unused', 'unused'],
];

/** @param {any} role @returns {string} such as "string 2", "supply +7 V", "unknown" */
export function roleWords(role) {
  if (role.carries === 'string') return `string ${role.string}`;
  if (role.carries === 'supply') return role.volts === undefined ? 'supply' : `supply ${role.volts > 0 ? '+' : '−'}${Math.abs(role.volts)} V`;
  if (role.carries === 'control') return role.line ? `control “${role.line}”` : 'control voltage';
  return ROLES.find(([carries]) => carries === role.carries)?.[1] ?? String(role.carries);
}

/** Pin keys as a person counts: 2 before 10. @param {Record<string, any>} pins */
export function pinOrder(pins) {
  return Object.keys(pins).sort((one, other) => Number(one) - Number(other) || one.localeCompare(other));
}

/** The number for the next pin. @param {Record<string, any>} pins */
export function nextPin(pins) {
  return String(Math.max(0, ...Object.keys(pins).map((key) => (Number.isInteger(Number(key)) ? Number(key) : 0))) + 1);
}
