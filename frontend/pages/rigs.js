/** rigs.js: the rigs, newest first, each with its strings; beside them the instruments and synths they join. */
import { allSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { PageHead } from '../parts/page-head.js';
import { sheetAddress } from '../places-rules.js';
import { stringNumbers } from '../rig-rules.js';
import { counted, noteName, number, shortDay } from '../words-rules.js';

export async function show(page) {
  page.title('Rigs and gear');
  const [rigs, instruments, synths] = await Promise.all([allSheets('rigs'), allSheets('instruments'), allSheets('synths')]);
  const known = new Map(instruments.map((instrument) => [instrument.id, instrument]));
  page.twoColumns();
  PageHead(page.leaf, {
    title: 'Rigs',
    lead: 'An instrument, an adapter and a synth, as they were set on a day.',
    doors: [
      rigs.length ? el('a', { class: 'button inked', href: '/new/log' }, 'Log a rehearsal') : null,
      el('a', { class: 'button', href: '/new/rigs' }, 'New rig'),
    ].filter(Boolean),
  });
  page.leaf.append(rigs.length === 0
    ? el('p', {}, 'No rig yet. It takes an instrument and a synth; then every string gets its input and its sensitivity.')
    : el('ul', { class: 'ruled rig-list' }, rigs.map(rigLine)));
  fill(page.margin,
    gearList('Instruments', '/new/instruments', 'New instrument', instruments, (sheet) => tuning(sheet.content)),
    gearList('Synths', '/new/synths', 'New synth', synths, (sheet) => counted(sheet.content.inputs, 'input')));

  function rigLine(rig) {
    return el('li', {}, el('a', { class: 'line', href: sheetAddress('rigs', rig.id) },
      el('span', { class: 'name' }, rig.title),
      el('span', { class: 'aside' }, shortDay(rig.content.date ?? rig.savedAt)),
      el('span', { class: 'per-string' }, Object.entries(rig.content.assignments ?? {})
        .sort(([one], [other]) => Number(one) - Number(other))
        .map(([string, { sensitivity }]) => el('span', {},
          el('span', { class: 'pencil' }, noteOf(rig, string), ' '), sensitivity === undefined ? '–' : number(sensitivity))))));
  }

  function noteOf(rig, string) {
    const note = known.get(rig.content.instrument.id)?.content.strings[string]?.note;
    return note ? noteName(note) : `string ${string}`;
  }
}

function gearList(title, href, word, sheets, aside) {
  return el('section', {},
    el('h2', {}, title),
    sheets.length ? el('ul', { class: 'ruled' }, sheets.map((sheet) => el('li', {}, el('a', { class: 'line', href: sheetAddress(sheet.kind, sheet.id) },
      el('span', { class: 'name' }, sheet.title), el('span', { class: 'aside' }, aside(sheet)))))) : null,
    el('p', { class: 'door' }, el('a', { class: 'button', href }, word)));
}

function tuning(instrument) {
  return stringNumbers(instrument).map((string) => noteName(instrument.strings[string].note)).join(' ');
}
