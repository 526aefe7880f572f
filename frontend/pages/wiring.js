/** wiring.js: the wiring bench: which rig to lay on it, or two sockets to start from. */
import { allSheets, createSheet } from '../api.js';
import { el } from '../dom.js';
import { playerName } from '../drafts.js';
import { Cautions } from '../parts/cautions.js';
import { PageHead } from '../parts/page-head.js';
import { instead } from '../parts/reading-only.js';
import { wiringAddress } from '../places-rules.js';
import { firstRig } from '../rig-rules.js';
import { asSentence, counted, localDay, shortDay } from '../words-rules.js';

export async function show(page) {
  page.title('Wiring bench');
  const [rigs, instruments, synths] = await Promise.all([allSheets('rigs'), allSheets('instruments'), allSheets('synths')]);
  PageHead(page.leaf, {
    title: 'Wiring bench',
    lead: 'From two plugs that were never meant for each other to an adapter that is safe to plug in.',
  });
  if (rigs.length) {
    page.leaf.append(el('h2', {}, 'Which rig lies on the bench?'), el('ul', { class: 'ruled' }, rigs.map((rig) => el('li', {}, el('a', { class: 'line', href: wiringAddress(rig.id) },
      el('span', { class: 'name' }, rig.title),
      el('span', { class: 'aside' }, adapterWords(rig.content), ' · ', shortDay(rig.content.date ?? rig.savedAt)))))));
  }
  page.leaf.append(el('h2', {}, rigs.length ? 'Or start from two sockets' : 'Start from two sockets'));
  page.leaf.append(instead());
  if (instruments.length && synths.length) page.leaf.append(el('div', { class: 'writes' }, start(instruments, synths)));
  else {
    page.leaf.append(
      el('p', {}, 'It takes an instrument and a synth, each with its socket; a pin nobody knows is written down as such.'),
      el('div', { class: 'buttons' },
        instruments.length ? null : el('a', { class: 'button inked', href: '/new/instruments' }, 'Describe the instrument'),
        synths.length ? null : el('a', { class: 'button inked', href: '/new/synths' }, 'Describe the synth')));
  }
  page.leaf.append(Cautions('soldering'));
}

function adapterWords({ adapter, readings = {} }) {
  const routes = Object.keys(adapter?.routes ?? {}).length;
  if (routes === 0) return 'no adapter yet';
  const measured = Object.keys(readings).length;
  return counted(routes, 'route') + (measured ? `, ${counted(measured, 'reading')}` : '');
}

function start(instruments, synths) {
  const choice = (label, sheets) => el('select', { 'aria-label': label, on: { change: () => { id = crypto.randomUUID(); } } }, sheets.map(({ id, title }) => el('option', { value: id }, title)));
  const instrument = choice('Instrument', instruments);
  const synth = choice('Synth', synths);
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  // One id for the pair: pressing twice makes one rig. Who comes back to this page and takes another pair makes another.
  let id = crypto.randomUUID();
  const begin = async () => {
    const find = (sheets, select) => sheets.find((sheet) => sheet.id === select.value);
    try {
      await createSheet('rigs', {
        id,
        content: firstRig(find(instruments, instrument), find(synths, synth), localDay(new Date())),
        reason: 'Begun at the wiring bench',
        by: playerName(),
      });
      location.assign(wiringAddress(id));
    } catch (failure) {
      trouble.textContent = asSentence(failure.message);
    }
  };
  return [
    el('div', { class: 'two-sockets' },
      el('label', { class: 'field' }, el('span', { class: 'label' }, 'Instrument'), instrument),
      el('label', { class: 'field' }, el('span', { class: 'label' }, 'Synth'), synth)),
    el('div', { class: 'buttons' }, el('button', { type: 'button', class: 'inked', on: { click: begin } }, 'Lay them on the bench')),
    trouble,
  ];
}
