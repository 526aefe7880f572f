/**
 * divider-finder.js: the two resistors that make a control voltage, best first, each with what it would give.
 *
 *   const finder = DividerFinder(element, { goal: () => ({ supplyVolts, targetVolts, … }), onTake: ({ upperOhms, lowerOhms }) => … });
 *
 *   finder.update();   // when what is wanted may have changed
 *
 * goal() gives what /api/bench/divider asks for, or a sentence on what is missing.
 */
import { post } from '../api.js';
import { el, fill } from '../dom.js';
import { same } from '../drafts-rules.js';
import { asSentence, number } from '../words-rules.js';
import { ohmsWords } from './adapter-rules.js';
import { Rings } from './rings.js';

const SHOWN = 6;

/** @param {HTMLElement} element @param {{ goal: () => any, onTake: (choice: any) => void }} state */
export function DividerFinder(element, { goal, onTake }) {
  const outcome = el('p', { role: 'status' });
  const list = el('ol', { class: 'ruled' });
  /** What was asked for last: its answer, and no other, may stand here. */
  let asked = null;
  element.classList.add('divider-finder');
  fill(element, el('div', { class: 'buttons' }, el('button', { type: 'button', on: { click: find } }, 'Find resistors')), outcome, list);
  return { element, update };

  /** Resistors for another voltage than is wanted now must not be taken. */
  function update() {
    if (!asked || same(goal(), asked)) return;
    asked = null;
    fill(list);
    outcome.textContent = 'What it should give, or from what, has changed: find resistors again.';
  }

  async function find() {
    fill(list);
    const wanted = goal();
    asked = typeof wanted === 'string' ? null : wanted;
    if (!asked) {
      outcome.textContent = wanted;
      return;
    }
    outcome.textContent = 'Looking through every pair …';
    try {
      const { best, alternatives } = await post('/api/bench/divider', wanted);
      if (asked !== wanted) return;
      outcome.textContent = `Every pair of ${wanted.series ?? 'E24'} was looked at. Closest first:`;
      fill(list, [best, ...alternatives].slice(0, SHOWN).map(line));
    } catch (failure) {
      if (asked !== wanted) return;
      const { nearest } = failure.body ?? {};
      outcome.textContent = asSentence(failure.message);
      fill(list, nearest ? line(nearest) : null);
    }
  }

  function line(choice) {
    const pair = `${ohmsWords(choice.upperOhms)} over ${ohmsWords(choice.lowerOhms)}`;
    const most = Math.round(100 * Math.max(choice.upperRatingShare, choice.lowerRatingShare));
    return el('li', {},
      el('div', {},
        el('p', { class: 'pair' }, el('strong', {}, pair), ' gives ', volts(choice.volts), ` (${exact(choice.minVolts)} to ${exact(choice.maxVolts)} V)`),
        el('p', { class: 'pencil' }, `off by ${exact(choice.errorVolts)} V · ${number(Number(choice.milliamps.toPrecision(3)))} mA · seen as ${ohmsWords(Number(choice.theveninOhms.toPrecision(3)))} · ${most < 1 ? 'under 1' : most} % of its rating`),
        el('p', {}, 'upper ', Rings(choice.upperBands)),
        el('p', {}, 'lower ', Rings(choice.lowerBands))),
      el('button', { type: 'button', 'aria-label': `Take ${pair}`, on: { click: () => take(choice) } }, 'Take'));
  }

  function take(choice) {
    update();
    if (asked) onTake(choice);
  }
}

function volts(amount) {
  return [exact(amount), el('span', { class: 'unit' }, 'V')];
}

function exact(amount) {
  return amount.toFixed(3).replace('-', '−');
}
