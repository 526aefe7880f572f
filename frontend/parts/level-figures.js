/**
 * level-figures.js: the measured figures as tables: every input, and what each string can give at all.
 *
 *   InputFigures(element, { inputs: report.inputs, mainsHertz: 50 });
 *   StringReach(element, { strings: report.strings });
 *   LevelDifferences(element, { comparison, first: 'before', second: 'now' });
 */
import { el, fill } from '../dom.js';
import { signedTenth, tenth } from '../level-rules.js';
import { asSentence, noteName, number } from '../words-rules.js';

/** @param {HTMLElement} element @param {{ inputs: any[], mainsHertz: number }} state */
export function InputFigures(element, { inputs, mainsHertz }) {
  fill(element, wide('Every input', ['Input', 'Peak', 'RMS', 'Crest', 'Noise', mainsHertz ? `Hum (${mainsHertz} Hz)` : 'Hum', 'Signal to noise', 'Clipped', 'Offset'],
    inputs.map((each) => [
      String(each.input), tenth(each.peakDbfs), tenth(each.rmsDbfs), tenth(each.crestDb), tenth(each.noiseDbfs),
      each.humDbfs === null ? '–' : `${each.humStandsOut ? '' : '≤ '}${tenth(each.humDbfs)}`,
      tenth(each.signalToNoiseDb), each.clippedSamples ? `${each.clippedSamples} samples` : 'none', `${number(Math.round(each.dcOffset * 1e4) / 100)} %`,
    ])),
  el('p', { class: 'help' }, 'Peak, RMS, noise and hum in dBFS; crest and signal to noise in dB. “≤”: no hum stands out, so it can be no more than that.'));
}

/** @param {HTMLElement} element @param {{ strings: any[] }} state */
export function StringReach(element, { strings }) {
  const slow = strings.filter((each) => each.remark);
  fill(element,
    wide('Range and delay', ['String', 'Open note', 'Least delay', 'Highest note', 'Least delay there'], strings.map((each) => [
      String(each.string), `${noteName(each.open)}, ${tenth(each.openHertz)} Hz`, `${tenth(each.openDelayMillis)} ms`,
      `${noteName(each.highest)}, ${tenth(each.highestHertz)} Hz`, `${tenth(each.highestDelayMillis)} ms`,
    ])),
    slow.map((each) => el('p', {}, `String ${each.string} is slow for physical reasons. ${each.remark}`)),
    el('p', { class: 'help' }, 'Two periods of the note: no pitch detector can be sure sooner. The synth adds its own time to this. Highest note: two octaves above the open one.'));
}

/** @param {HTMLElement} element @param {{ comparison: any, first: string, second: string }} state */
export function LevelDifferences(element, { comparison, first, second }) {
  fill(element,
    el('p', { class: 'verdict' }, comparison.sentence),
    wide(`${second} less ${first}`, ['String', 'Level', 'Noise', 'Hum', 'Signal to noise', 'Window', 'Tilt'], comparison.strings.map((each) => [
      String(each.string), signedTenth(each.levelDb), signedTenth(each.noiseDb), signedTenth(each.humDb), signedTenth(each.signalToNoiseDb), signedTenth(each.windowDb), signedTenth(each.tiltDbPerOctave),
    ])),
    el('p', { class: 'help' }, `${asSentence(`${second} less ${first}`).slice(0, -1)}, in dB; tilt in dB per octave, above 0 is brighter.`));
}

function wide(label, heads, rows) {
  return el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': label }, el('table', {},
    el('thead', {}, el('tr', {}, heads.map((words) => el('th', { scope: 'col' }, words)))),
    el('tbody', {}, rows.map(([head, ...cells]) => el('tr', {}, el('th', { scope: 'row' }, head), cells.map((words) => el('td', {}, words)))))));
}
