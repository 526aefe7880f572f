/** rig-rules.js: what a rig needs to know of its instrument and its synth. No DOM. */
import { number } from './words-rules.js';

/** String numbers of an instrument in order, highest first. @param {any} instrument content @returns {string[]} */
export function stringNumbers(instrument) {
  return Object.keys(instrument.strings).sort((one, other) => Number(one) - Number(other));
}

/**
 * A rig to begin with: every string to the input of its number, each at the customary start.
 *
 * @param {any} instrument envelope
 * @param {any} synth envelope
 * @param {string} date ISO
 */
export function firstRig(instrument, synth, date) {
  const { customaryStart } = synth.content.sensitivityScale;
  const assignments = {};
  for (const string of stringNumbers(instrument.content)) {
    const input = Number(string);
    assignments[string] = {
      ...(input <= synth.content.inputs ? { input } : {}),
      ...(customaryStart === undefined ? {} : { sensitivity: customaryStart }),
      trimDecibels: 0,
    };
  }
  return {
    title: `${instrument.title} into ${synth.title}`,
    date,
    instrument: { id: instrument.id },
    synth: { id: synth.id },
    assignments,
    notes: '',
  };
}

/**
 * A new rig with another instrument or synth. What the player wrote stays where it still has a place; what nobody touched
 * is what a first rig of the new pair would have.
 *
 * @param {any} content the rig so far
 * @param {{ instrument: any, synth: any }} was envelopes
 * @param {{ instrument: any, synth: any }} now envelopes
 * @returns {any} the rig's next content
 */
export function withGear(content, was, now) {
  const before = firstRig(was.instrument, was.synth, content.date);
  const next = firstRig(now.instrument, now.synth, content.date);
  for (const [string, assumed] of Object.entries(next.assignments)) {
    const [written, untouched] = [content.assignments?.[string], before.assignments[string]];
    if (!written) continue;
    for (const field of ['input', 'sensitivity', 'trimDecibels']) if (written[field] !== untouched?.[field]) assumed[field] = written[field];
  }
  return { ...content, ...next, title: content.title === before.title ? next.title : content.title, notes: content.notes };
}

/** @param {any} content rig @param {string} string its number @returns {{ input?: number, sensitivity?: number, trimDecibels: number }} made if it was missing */
export function assignmentOf(content, string) {
  content.assignments ??= {};
  content.assignments[string] ??= { trimDecibels: 0 };
  return content.assignments[string];
}

/**
 * What stands out about the assignments, one sentence each.
 *
 * @param {any} content rig
 * @param {any} instrument content
 * @param {any} synth content
 * @returns {string[]}
 */
export function remarks(content, instrument, synth) {
  const found = [];
  const strings = stringNumbers(instrument);
  const byInput = new Map();
  for (const string of strings) {
    const { input, sensitivity } = content.assignments?.[string] ?? {};
    if (input === undefined) found.push(`String ${string} goes to no input: the synth does not hear it.`);
    else byInput.set(input, [...(byInput.get(input) ?? []), string]);
    const { min, max } = synth.sensitivityScale;
    if (sensitivity !== undefined && (sensitivity < min || sensitivity > max)) {
      found.push(`String ${string} is at ${number(sensitivity)}; this synth's scale runs from ${number(min)} to ${number(max)}.`);
    }
  }
  for (const [input, feeding] of byInput) {
    if (feeding.length > 1) found.push(`Strings ${feeding.join(' and ')} share input ${input}.`);
    if (input > synth.inputs) found.push(`Input ${input} is beyond the synth's ${synth.inputs}.`);
  }
  return found;
}
