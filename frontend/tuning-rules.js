/** tuning-rules.js: open strings: notes, frequencies, tunings to start from. No DOM. */

const STEPS = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 };

/** Tunings a new instrument can start from, highest string first: [words, notes]. */
export const TUNINGS = [
  ['Violin', ['E5', 'A4', 'D4', 'G3']],
  ['Viola', ['A4', 'D4', 'G3', 'C3']],
  ['Cello', ['A3', 'D3', 'G2', 'C2']],
  ['Five strings, E to C', ['E5', 'A4', 'D4', 'G3', 'C3']],
  ['Six strings, E to F', ['E5', 'A4', 'D4', 'G3', 'C3', 'F2']],
  ['Seven strings, E to B♭', ['E5', 'A4', 'D4', 'G3', 'C3', 'F2', 'Bb1']],
];

/**
 * MIDI number of a scientific pitch name ("C4" is 60, "A4" is 69).
 *
 * @param {string} name such as "E5", "Bb3", "F♯4"
 * @returns {number | null} null if it is no note, or none of MIDI's 0 to 127
 */
export function midiOf(name) {
  const parts = /^([A-Ga-g])([#b♯♭]?)(-?\d{1,2})$/.exec(name.trim());
  if (!parts) return null;
  const bend = { '#': 1, '♯': 1, b: -1, '♭': -1 }[parts[2]] ?? 0;
  const midi = 12 * (Number(parts[3]) + 1) + STEPS[parts[1].toUpperCase()] + bend;
  return midi >= 0 && midi <= 127 ? midi : null;
}

/** The name with a capital letter and plain accidentals, as the notebook stores it. @param {string} name a note */
export function plainName(name) {
  const tidy = name.trim().replace('♯', '#').replace('♭', 'b');
  return tidy[0].toUpperCase() + tidy.slice(1);
}

/**
 * Equal-tempered frequency in Hz (ISO 16 for A4 = 440 Hz).
 *
 * @param {number} midi
 * @param {number} cents above that note
 * @param {number} referenceHertz what A4 is tuned to
 */
export function hertz(midi, cents, referenceHertz) {
  return referenceHertz * 2 ** ((midi - 69) / 12 + cents / 1200);
}

/** @param {string[]} notes highest first @returns {Record<string, { note: string, cents: number }>} */
export function stringsOf(notes) {
  return Object.fromEntries(notes.map((note, index) => [String(index + 1), { note, cents: 0 }]));
}

/**
 * One string more, a fifth below the lowest.
 *
 * @param {Record<string, { note: string, cents: number }>} strings changed in place
 */
export function addString(strings) {
  const count = Object.keys(strings).length;
  const lowest = midiOf(strings[String(count)].note) ?? 55;
  strings[String(count + 1)] = { note: nameOf(Math.max(0, lowest - 7)), cents: 0 };
}

/** @param {number} midi */
export function nameOf(midi) {
  const names = ['C', 'C#', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
  return `${names[midi % 12]}${Math.floor(midi / 12) - 1}`;
}
