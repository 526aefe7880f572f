/**
 * bench-sheet.js: the sheet that lies beside the soldering iron: drawing, pin tables, parts with their rings, meter plan
 * with boxes to tick, cautions. On paper only.
 *
 *   const paper = BenchSheet(element, { bench });
 *   paper.show(sheet, standing({ sheet, missing }));   // see wiring-rules.js
 */
import { el, fill } from '../dom.js';
import { drawingOf } from './adapter-drawing.js';
import { pinOrder, roleWords, synthRoleWords } from './connector-rules.js';
import { SEVERITY_WORDS } from './findings.js';
import { Rings } from './rings.js';

/** @param {HTMLElement} element @param {{ bench: import('../bench-keeping.js').BenchKeeping }} state */
export function BenchSheet(element, { bench }) {
  const mark = el('p', { class: 'mark' });
  const body = el('div');
  let shown;
  fill(element, mark, body);
  element.classList.add('bench-sheet', 'only-print');
  return { element, show };

  /** @param {any} sheet the server's answer, or null @param {ReturnType<typeof import('../wiring-rules.js').standing>} told */
  function show(sheet, told) {
    fill(mark, el('strong', {}, told.mark), `${told.isJudged ? '.' : ':'} ${told.words}`,
      sheet && !told.isJudged ? ' The drawing, the parts and the meter plan wait for that.' : null);
    build(sheet);
    for (const part of body.querySelectorAll('.to-build')) part.hidden = !told.isJudged;
  }

  function build(sheet) {
    // Every answer is a new object; drawing it again for each keystroke would be work for nothing.
    if (sheet === shown) return;
    shown = sheet;
    if (!sheet) {
      fill(body, el('p', {}, 'There is no adapter to print yet.'));
      return;
    }
    fill(body,
      el('ul', { class: 'plain-cautions' }, sheet.cautions.map((sentence) => el('li', {}, sentence))),
      sheet.findings.length ? [el('h2', {}, 'What the check says'), el('ul', {}, sheet.findings.map((finding) => el('li', {},
        el('strong', {}, SEVERITY_WORDS[finding.severity] ?? finding.severity), `: ${finding.sentence} ${finding.remedy}`)))] : null,
      el('div', { class: 'drawings to-build' }, ['mating', 'solder'].map((side) => el('figure', {}, drawingOf(sheet.drawings[side], `paper-${side}`)))),
      el('h2', {}, 'Pins'),
      el('div', { class: 'pin-tables' },
        pinTable(`Instrument: ${bench.instrument.content.title}`, bench.instrument.content.connector, roleWords),
        pinTable(`Synth: ${bench.synth.content.title}`, bench.synth.content.connector, synthRoleWords)),
      el('section', { class: 'to-build' }, el('h2', {}, 'Parts'), el('table', {},
        el('thead', {}, el('tr', {}, ['', 'Part', 'Value', 'Rings', 'Route'].map((word) => el('th', { scope: 'col' }, word)))),
        el('tbody', {}, sheet.parts.map(({ reference, part, value, rings, route }) => el('tr', {},
          el('td', {}, reference), el('td', {}, part), el('td', {}, value), el('td', {}, rings.length ? Rings(rings) : ''), el('td', {}, route)))))),
      el('section', { class: 'to-build' }, el('h2', {}, 'Meter plan'), el('ol', { class: 'boxes' }, sheet.meterPlan.map(({ number, instruction, kind }) => el('li', {},
        el('span', { class: 'box', 'aria-hidden': 'true' }), el('b', {}, number), el('span', {}, instruction), el('span', { class: 'blank' }, kind === 'voltage' ? 'V' : 'Ω'))))));
  }
}

function pinTable(title, connector, words) {
  return el('table', {}, el('caption', {}, title),
    el('thead', {}, el('tr', {}, ['Pin', 'Carries', 'Note'].map((word) => el('th', { scope: 'col' }, word)))),
    el('tbody', {}, pinOrder(connector?.pins ?? {}).map((label) => el('tr', {},
      el('td', {}, label), el('td', {}, words(connector.pins[label].role)), el('td', {}, connector.pins[label].note ?? '')))));
}
