/**
 * adapter-summary.js: what an adapter joins, as a table that can be read and printed.
 *
 *   const summary = AdapterSummary(element, { adapter, instrument, synth });   // contents; adapter may be undefined
 *   summary.show(nextAdapter);
 */
import { el, fill } from '../dom.js';
import { counted } from '../words-rules.js';
import { routesInOrder, viaWords } from './adapter-rules.js';
import { roleWords, synthRoleWords } from './connector-rules.js';

/** @param {HTMLElement} element @param {{ adapter?: any, instrument: any, synth: any }} state */
export function AdapterSummary(element, { adapter, instrument, synth }) {
  element.classList.add('adapter-summary');
  show(adapter);
  return { show };

  function show(next) {
    const routes = routesInOrder(next);
    const isOpen = element.querySelector('details')?.open;
    fill(element,
      el('h2', {}, 'Adapter'),
      routes.length === 0
        ? el('p', { class: 'pencil' }, 'No wiring is written down: a ready-made cable, or not yet.')
        : el('details', { open: isOpen },
          el('summary', {}, counted(routes.length, 'route')),
          el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Routes of the adapter' }, el('table', {},
            el('thead', {}, el('tr', {}, ['Instrument pin', 'Through', 'Synth pin'].map((word) => el('th', { scope: 'col' }, word)))),
            el('tbody', {}, routes.map((route) => el('tr', {},
              el('td', {}, pin(instrument.connector, route.instrumentPin, roleWords)),
              el('td', {}, viaWords(route.via)),
              el('td', {}, pin(synth.connector, route.synthPin, synthRoleWords)))))))));
  }
}

function pin(connector, label, words) {
  if (label === undefined) return '–';
  const role = connector?.pins?.[label]?.role;
  return role ? [label, ' ', el('span', { class: 'pencil' }, words(role))] : label;
}
