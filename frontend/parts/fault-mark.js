/** fault-mark.js: the shape of a kind of fault, small, beside its word. */
import { svg } from '../dom.js';
import { faultKind } from '../take-rules.js';

/** @param {string} kind @returns {SVGElement} */
export function faultMark(kind) {
  const { path, open } = faultKind(kind);
  return svg('svg', { class: open ? 'fault-mark open' : 'fault-mark', viewBox: '-8 -8 16 16', width: 16, height: 16, 'aria-hidden': 'true' }, svg('path', { d: path }));
}
