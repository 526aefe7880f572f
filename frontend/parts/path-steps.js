/**
 * path-steps.js: the short way into a notebook of one's own: three stops on a string.
 *
 *   leaf.append(PathSteps('synth'));
 */
import { el } from '../dom.js';

const STOPS = [['instrument', 'Your instrument'], ['synth', 'Your synth'], ['rig', 'The two together']];

/** @param {'instrument' | 'synth' | 'rig'} here */
export function PathSteps(here) {
  const reached = STOPS.findIndex(([stop]) => stop === here);
  return el('ol', { class: 'path-steps', 'aria-label': 'The way' }, STOPS.map(([stop, words], index) => el('li', {
    class: index < reached ? 'done' : null,
    'aria-current': stop === here ? 'step' : null,
  }, words, index < reached ? el('span', { class: 'unseen' }, ' (done)') : null)));
}
