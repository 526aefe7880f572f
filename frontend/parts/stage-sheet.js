/**
 * stage-sheet.js: the set for the music stand: one line a piece, big. It shows on paper alone.
 *
 *   StageSheet(element, { set, lines });   // lines: see stageLines in stage-rules.js
 */
import { el, fill } from '../dom.js';
import { longDay } from '../words-rules.js';

/** @param {HTMLElement} element @param {{ set: any, lines: any[] }} state */
export function StageSheet(element, { set, lines }) {
  element.classList.add('stage-sheet', 'only-print');
  fill(element,
    el('p', { class: 'title' }, set.title),
    el('p', { class: 'when' }, [longDay(set.date), set.place].filter(Boolean).join(', ')),
    el('ol', {}, lines.map((line) => el('li', {},
      line.newRig ? el('p', { class: 'rig' }, `Rig: ${line.newRig}`) : null,
      el('p', { class: 'piece' },
        el('span', { class: 'position' }, line.position),
        el('span', { class: 'name' }, line.title),
        el('span', { class: 'slot' }, line.slot)),
      el('p', { class: 'about' }, [line.key, line.meter, line.tempo, line.note].filter(Boolean).join(' · '))))));
}
