/**
 * take-score.js: how well a take was followed: the one figure with its definition, faults string by string, and the score
 * against the script if there is one.
 *
 *   const score = TakeScore(element);  score.show(report);
 */
import { el, fill } from '../dom.js';
import { clock, countsInWords } from '../take-rules.js';
import { number } from '../words-rules.js';
import { StringBoard } from './string-board.js';

/** @param {HTMLElement} element */
export function TakeScore(element) {
  element.classList.add('take-score');
  const figures = el('div');
  const strings = el('div');
  const script = el('div');
  fill(element, figures, strings, script);
  const board = StringBoard(strings, { label: 'Faults per string' });
  strings.classList.add('small');
  return {
    show(report) {
      const { tracking, notes } = report;
      fill(figures,
        el('p', { class: 'tracking' }, el('b', {}, Math.round(tracking.percent)), el('span', { class: 'unit' }, 'of 100, tracking')),
        el('p', { class: 'help' }, tracking.definition),
        el('p', {}, `${notes.heard} notes heard in ${clock(report.seconds)}, ${notes.kept} after mending; ${number(Math.round(tracking.faultsPerMinute * 10) / 10)} faults a minute; ${Math.round(tracking.cleanShare * 100)} % of the notes came clean.`));
      board.clear();
      for (const string of report.perString) {
        board.row(String(string.string), string.open, [el('span', { class: 'counts' }, countsInWords(string.faults))],
          [number(Math.round(string.faultsPerMinute * 10) / 10), el('span', { class: 'unit' }, 'a minute')]);
      }
      fill(script, report.score ? against(report) : null);
    },
  };
}

function against({ score, scoreRaw }) {
  const percent = (share) => `${Math.round(share * 100)} %`;
  const line = (words, raw, now) => el('tr', {}, el('th', { scope: 'row' }, words), el('td', {}, percent(raw.f1)), el('td', {}, percent(now.f1)), el('td', {}, percent(now.precision)), el('td', {}, percent(now.recall)));
  return [
    el('h2', {}, 'Against the script'),
    el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Score against the script' }, el('table', {},
      el('thead', {}, el('tr', {}, ['', 'as it came', 'mended', 'of its notes right', 'of the script found'].map((word) => el('th', { scope: 'col' }, word)))),
      el('tbody', {},
        line('Pitch and start', scoreRaw.onset, score.onset),
        line('Pitch, start and end', scoreRaw.onsetOffset, score.onsetOffset),
        line('Whichever string: pitch and start', scoreRaw.pitchOnset, score.pitchOnset)))),
    el('p', { class: 'help' }, 'A note is right when it starts within 50 ms of the script and within 50 cents of its pitch, each matched once (F1, as in the evaluation of note transcription). The script is laid where it fits best.'),
  ];
}
