/**
 * trigger-windows.js: per string, where a trigger may lie on a decibel scale: above every leak, below the softest stroke.
 *
 *   TriggerWindows(element, { report, notes, was: summary or null });   // was: an earlier measurement, in pencil
 */
import { el, fill, svg } from '../dom.js';
import { scaleOf, tenth } from '../level-rules.js';
import { noteName } from '../words-rules.js';

const LANE = 66;
const LEFT = 46;
const RIGHT = 14;

/** @param {HTMLElement} element @param {{ report: any, notes: Record<string, string>, was?: any }} state */
export function TriggerWindows(element, { report, notes, was }) {
  const { windows } = report;
  const picture = el('div', { class: 'picture' });
  element.classList.add('trigger-windows');
  fill(element,
    el('figure', {}, picture,
      el('figcaption', { class: 'small pencil' }, `From the loudest thing a string must ignore (◂) to its own softest stroke (▸), with ${tenth(windows[0]?.marginDb)} dB of room at both ends. The upright stroke is where the advised sensitivity triggers.${was ? ' In pencil beneath: the measurement attached to the rig.' : ''}`)),
    windows.filter((each) => each.advice).map((each) => el('p', { class: 'no-window' }, each.advice)),
    el('details', {}, el('summary', {}, 'The windows in numbers'), table()));
  let width = 0;
  new ResizeObserver(([entry]) => {
    const next = Math.round(entry.contentRect.width);
    if (next === width || next === 0) return;
    width = next;
    fill(picture, drawing());
  }).observe(picture);

  function name(string) {
    return notes[string] ? noteName(notes[string]) : String(string);
  }

  function source({ leakFromString }) {
    if (leakFromString === 0) return 'noise';
    return leakFromString ? `string ${leakFromString}` : 'a neighbour';
  }

  function drawing() {
    const { low, high } = scaleOf(windows);
    const height = windows.length * LANE + 26;
    const xOf = (decibels) => LEFT + ((decibels - low) / (high - low)) * (width - LEFT - RIGHT);
    const step = (high - low) / 10 > (width - LEFT) / 52 ? 20 : 10;
    const ticks = Array.from({ length: Math.floor((high - low) / step) + 1 }, (unused, index) => low + index * step);
    return svg('svg', { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-labelledby': 'windows-title windows-words' },
      svg('title', { id: 'windows-title' }, 'Trigger windows, string by string'),
      svg('desc', { id: 'windows-words' }, windows.map((each) => `String ${each.string}: ${each.widthDb > 0 ? `${tenth(each.widthDb)} dB wide, from ${tenth(each.lowDbfs)} to ${tenth(each.highDbfs)}` : 'no window'}.`).join(' ')),
      ticks.map((at) => [
        svg('line', { class: 'grid', x1: xOf(at), x2: xOf(at), y1: 0, y2: height - 20 }),
        svg('text', { class: 'tick', x: xOf(at), y: height - 4, 'text-anchor': at === high ? 'end' : 'middle' }, at === high ? `${tenth(at)} dB` : tenth(at)),
      ]),
      windows.map((each, index) => lane(each, LANE * (index + 0.5), xOf)));
  }

  function lane(each, middle, xOf) {
    const isOpen = each.widthDb > 0;
    const earlier = was?.strings[each.string];
    const advised = report.advice.find(({ string }) => string === each.string);
    const trigger = advised ? xOf(each.softestStrokeDbfs - advised.catchMarginDb) : null;
    return svg('g', {},
      svg('line', { class: 'hair', x1: 0, x2: width, y1: middle, y2: middle }),
      svg('text', { class: 'which', x: 0, y: middle - 6 }, name(each.string)),
      svg('line', { class: 'reach', x1: xOf(each.loudestLeakDbfs), x2: xOf(each.softestStrokeDbfs), y1: middle, y2: middle }),
      isOpen ? svg('rect', { class: 'window', x: xOf(each.lowDbfs), y: middle - 9, width: Math.max(2, xOf(each.highDbfs) - xOf(each.lowDbfs)), height: 18 }) : null,
      svg('text', { class: 'end', x: xOf(each.loudestLeakDbfs), y: middle + 5, 'text-anchor': 'middle' }, '◂'),
      svg('text', { class: 'end', x: xOf(each.softestStrokeDbfs), y: middle + 5, 'text-anchor': 'middle' }, '▸'),
      trigger !== null ? svg('line', { class: 'trigger', x1: trigger, x2: trigger, y1: middle - 15, y2: middle + 15 }) : null,
      svg('text', { class: isOpen ? 'figure' : 'figure none', x: Math.max(LEFT + 34, Math.min(width - 40, (xOf(each.lowDbfs) + xOf(each.highDbfs)) / 2)), y: middle - 17, 'text-anchor': 'middle' }, isOpen ? `${tenth(each.widthDb)} dB` : 'no window'),
      earlier?.windowHighDb > earlier?.windowLowDb ? svg('line', { class: 'was', x1: xOf(earlier.windowLowDb), x2: xOf(earlier.windowHighDb), y1: middle + 20, y2: middle + 20 }) : null);
  }

  function table() {
    return el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Trigger windows' }, el('table', {},
      el('thead', {}, el('tr', {}, ['String', 'Must ignore', 'from', 'Softest stroke', 'Window from', 'to', 'Width (dB)'].map((words) => el('th', { scope: 'col' }, words)))),
      el('tbody', {}, windows.map((each) => el('tr', {}, el('th', { scope: 'row' }, `${each.string} ${name(each.string)}`),
        [tenth(each.loudestLeakDbfs), source(each), tenth(each.softestStrokeDbfs), tenth(each.lowDbfs), tenth(each.highDbfs), each.widthDb > 0 ? tenth(each.widthDb) : 'no window'].map((words) => el('td', {}, words)))))));
  }
}
