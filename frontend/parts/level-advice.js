/**
 * level-advice.js: which sensitivity to try on every string, with the room on both sides, and the button that applies it.
 *
 *   LevelAdvice(element, { report, content, notes, onApply: () => { … } });   // content: the rig as it is
 */
import { el, fill } from '../dom.js';
import { tenth } from '../level-rules.js';
import { number, signed } from '../words-rules.js';
import { StringBoard } from './string-board.js';

/** @param {HTMLElement} element @param {{ report: any, content: any, notes: Record<string, string>, onApply: () => void }} state */
export function LevelAdvice(element, { report, content, notes, onApply }) {
  const { advice, scale } = report;
  const board = el('div');
  element.classList.add('level-advice');
  fill(element, board,
    el('p', { class: 'how-known' }, howKnown(scale)),
    el('div', { class: 'buttons writes' }, el('button', { type: 'button', class: 'inked', on: { click: onApply } }, 'Apply to the rig'),
      el('span', { class: 'small pencil' }, 'Makes a new revision of the rig, with the reason in its note and this measurement attached.')));
  const rows = StringBoard(board, { label: 'Advised sensitivities' });
  for (const each of advice) {
    const was = content.assignments?.[each.string]?.sensitivity;
    rows.row(String(each.string), notes[each.string] ?? '', [
      el('span', { class: 'step' },
        was === undefined || was === each.setting ? null : el('span', { class: 'pencil' }, number(was), ' → '),
        el('span', { class: 'number' }, number(each.setting)),
        was === undefined ? null : was === each.setting ? el('span', { class: 'pencil' }, ' as it is') : el('span', { class: 'changed' }, ` (${signed(Number((each.setting - was).toPrecision(6)))})`)),
    ], [each.isAssumed ? el('span', { class: 'assumed' }, 'assumed') : null].filter(Boolean));
    board.querySelector('ol').append(el('li', { class: 'room' }, room(each), notable(each)));
  }
}

function room(each) {
  const soft = each.catchMarginDb >= 0 ? `Soft strokes lie ${tenth(each.catchMarginDb)} dB above the trigger` : `Soft strokes fall ${tenth(-each.catchMarginDb)} dB short of the trigger`;
  const leak = each.ignoreMarginDb >= 0 ? `the worst leak ${tenth(each.ignoreMarginDb)} dB below it` : `the worst leak reaches ${tenth(-each.ignoreMarginDb)} dB over it`;
  return `${soft}, ${leak}.${each.headroomDb === null ? '' : ` ${tenth(each.headroomDb)} dB to clipping.`}`;
}

function notable(each) {
  const words = [];
  if (each.catchMarginDb < 0 || each.ignoreMarginDb < 0) words.push('A compromise.');
  if (each.isAtEnd) words.push('The scale ends here; change the trim or the route as well.');
  if (each.headroomDb !== null && each.headroomDb < 1) words.push('Loud strokes come close to clipping; lower the trim.');
  return words.length ? el('span', { class: 'unsafe' }, ` ${words.join(' ')}`) : null;
}

function howKnown(scale) {
  const step = `${number(Math.round(scale.decibelsPerStep * 100) / 100)} dB per step`;
  const from = {
    assumed: `Assumed, not measured: ${step} of the scale. Measure it (“What you know beforehand”) for advice you can trust further.`,
    synth: `${step}, as the synth’s sheet says.`,
    measured: `${step}, measured: a line through ${scale.fit?.points} readings, which explains ${Math.round((scale.fit?.rSquared ?? 0) * 100)} % of their scatter.`,
  }[scale.from];
  return `${from}${scale.thresholdAssumed ? ` Also assumed: that the usual start, ${number(scale.customaryStart)}, suits the middle one of the strings. Try it and listen.` : ''}`;
}
