/**
 * take-along.js: the wiring as files for other tools: drawing, parts, netlist, and the wiring itself.
 *
 *   const along = TakeAlong(element, { title: 'Stage violin' });
 *   along.show(sheet, standing({ sheet, missing }));   // see wiring-rules.js; nothing is handed out before it is judged
 */
import { el, fill } from '../dom.js';

/** [word, ending, type, content of the sheet]. */
const FILES = [
  ['Drawing, mating side (SVG)', 'mating-side.svg', 'image/svg+xml', (sheet) => sheet.drawings.mating],
  ['Drawing, solder side (SVG)', 'solder-side.svg', 'image/svg+xml', (sheet) => sheet.drawings.solder],
  ['Parts list (CSV)', 'parts.csv', 'text/csv', (sheet) => sheet.partsCsv],
  ['Netlist for SPICE', 'netlist.cir', 'text/plain', (sheet) => sheet.netlist],
  ['The wiring itself (JSON)', 'wiring.json', 'application/json', (sheet) => `${JSON.stringify(sheet.file, null, 2)}\n`],
];

/** @param {HTMLElement} element @param {{ title: string }} state */
export function TakeAlong(element, { title }) {
  let sheet = null;
  const buttons = FILES.map(([word, ending, type, content]) => el('button', { type: 'button', on: { click: () => hand(ending, type, content(sheet)) } }, word));
  const waits = el('p', { class: 'pencil', role: 'status' });
  fill(element,
    el('p', {}, 'The bench sheet has the drawing, both pin tables, the parts with their rings, and the meter plan with boxes to tick.'),
    el('div', { class: 'buttons' }, el('button', { type: 'button', class: 'inked', on: { click: () => print() } }, 'Print the bench sheet'), buttons), waits);
  return { element, show };

  function show(next, { isJudged, words }) {
    sheet = next;
    for (const button of buttons) button.disabled = !isJudged;
    const why = isJudged ? '' : `The files wait until the wiring is judged: ${words}`;
    if (waits.textContent !== why) waits.textContent = why;
  }

  function hand(ending, type, content) {
    const address = URL.createObjectURL(new Blob([content], { type }));
    const name = title.toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '') || 'rig';
    el('a', { href: address, download: `${name}-${ending}` }).click();
    setTimeout(() => URL.revokeObjectURL(address), 10_000);
  }
}
