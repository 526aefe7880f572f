/**
 * cautions.js: what can hurt somebody or the gear, beside the place where it could.
 *
 *   element.append(Cautions('soldering'));       // or 'measuring', 'powering'
 */
import { el } from '../dom.js';

const WORDS = {
  soldering: [
    'Switch everything off and unplug it before you join or solder anything.',
    'Never bridge supply rails, to each other or to ground.',
    'If you are not sure, ask a qualified technician. Local rules come first.',
  ],
  measuring: [
    'Ohms only with everything off and unplugged. Volts with one hand, the probe on one pin alone: a slip can bridge two rails.',
    'Old instruments may differ from any table, this one included. If you are not sure, ask a qualified technician; local rules come first.',
  ],
  powering: [
    'First the whole of “nothing plugged in”, twice, all good. Only then plug in, with the synth off and its volume down, and switch on.',
    'A smell, warmth or a reading far off: off at once, unplug, and look. If you are not sure, ask a qualified technician; local rules come first.',
  ],
};

/** @param {'soldering' | 'measuring' | 'powering'} doing */
export function Cautions(doing) {
  return el('ul', { class: 'cautions', 'aria-label': `Before ${doing}` }, WORDS[doing].map((sentence) => el('li', {}, sentence)));
}
