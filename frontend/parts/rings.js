/**
 * rings.js: the coloured rings of a resistor, drawn and named (IEC 60062).
 *
 *   element.append(Rings(['yellow', 'violet', 'black', 'red', 'brown']));
 */
import { el } from '../dom.js';

/** @param {string[]} rings */
export function Rings(rings) {
  return el('span', { class: 'rings' },
    el('span', { class: 'body', 'aria-hidden': 'true' }, rings.map((colour) => el('i', { class: colour.replace(/[^a-z]/g, '') }))),
    el('span', {}, rings.join(', ')));
}
