/**
 * threshold-board.js: every figure a finding rests on, in the open, each on a slider that takes effect at once.
 *
 *   const board = ThresholdBoard(element, { thresholds, onMove: (name, figure | undefined) => … });   // undefined: back to where it stood
 *   board.show({ GHOST_START: -4 });                                                                  // those that are moved
 */
import { el, fill } from '../dom.js';
import { figureInWords, figureStep, thresholdGroups } from '../take-rules.js';

/** @param {HTMLElement} element @param {{ thresholds: any[], onMove: (name: string, figure: number | undefined) => void }} state */
export function ThresholdBoard(element, { thresholds, onMove }) {
  const rows = new Map();
  element.classList.add('threshold-board');
  fill(element,
    el('p', { class: 'help' }, 'Most figures are weights of evidence: added up, a sum above 0 makes a fault. 2.3 more makes something ten times as likely.'),
    thresholdGroups(thresholds).map(([word, group]) => el('details', {}, el('summary', {}, el('h3', {}, word)), group.map(row))));
  return {
    show(moved) {
      for (const [name, update] of rows) update(moved[name]);
    },
  };

  function row(threshold) {
    const { name, label, meaning, unit, standard, least, most } = threshold;
    const id = `threshold-${name}`;
    const slider = el('input', { type: 'range', id, min: least, max: most, step: figureStep(unit), 'aria-describedby': `${id}-means` });
    const reading = el('output', { for: id });
    const back = el('button', { type: 'button', class: 'quiet', on: { click: () => onMove(name, undefined) } }, `Back to ${figureInWords(standard, unit)}`);
    slider.addEventListener('input', () => onMove(name, Number(slider.value) === standard ? undefined : Number(slider.value)));
    rows.set(name, (figure) => {
      const here = figure ?? standard;
      if (Number(slider.value) !== here) slider.value = String(here);
      slider.setAttribute('aria-valuetext', figureInWords(here, unit));
      reading.textContent = figureInWords(here, unit);
      reading.classList.toggle('changed', figure !== undefined);
      back.hidden = figure === undefined;
    });
    rows.get(name)(undefined);
    return el('div', { class: 'threshold' },
      el('label', { for: id }, label.replace(/^[^:]+: /, (words) => (words.length < 14 ? '' : words))), reading, slider, el('span', { class: 'help', id: `${id}-means` }, meaning), back);
  }
}
