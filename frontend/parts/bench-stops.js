/**
 * bench-stops.js: the steps at the bench as stops on a string; a stop opens its part of the page.
 *
 *   leaf.append(BenchStops([['pins', 'Pins'], …]));     // ids of the folds, words
 */
import { el } from '../dom.js';

/** @param {[string, string][]} stops */
export function BenchStops(stops) {
  return el('nav', { class: 'bench-stops no-print', 'aria-label': 'Steps at the bench' }, el('ol', {}, stops.map(([id, words]) => el('li', {},
    el('a', { href: `#${id}`, on: { click: () => openFold(id) } }, words)))));
}

function openFold(id) {
  const fold = document.getElementById(id);
  if (fold instanceof HTMLDetailsElement) fold.open = true;
}
