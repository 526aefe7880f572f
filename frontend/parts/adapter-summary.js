/**
 * adapter-summary.js: what an adapter joins, as a table that can be read and printed. Drawing and checking it is the
 * wiring bench's work.
 *
 *   const summary = AdapterSummary(element, { adapter, instrument, synth });   // contents; adapter may be undefined
 *   summary.show(nextAdapter);
 */
import { el, fill } from '../dom.js';
import { counted } from '../words-rules.js';
import { roleWords } from './connector-rules.js';

/** @param {HTMLElement} element @param {{ adapter?: any, instrument: any, synth: any }} state */
export function AdapterSummary(element, { adapter, instrument, synth }) {
  element.classList.add('adapter-summary');
  show(adapter);
  return { show };

  function show(next) {
    const routes = Object.values(next?.routes ?? {});
    fill(element,
      el('h2', {}, 'Adapter'),
      routes.length === 0
        ? el('p', { class: 'pencil' }, 'No wiring is written down: a ready-made cable, or not yet. ', el('a', { href: '/wiring' }, 'To the wiring bench'))
        : el('details', {},
          el('summary', {}, counted(routes.length, 'route')),
          el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Routes of the adapter' }, el('table', {},
            el('thead', {}, el('tr', {}, ['From', 'Through', 'To'].map((word) => el('th', { scope: 'col' }, word)))),
            el('tbody', {}, routes.map((route) => el('tr', {},
              el('td', {}, pin(instrument.connector, route.from)),
              el('td', {}, through(route)),
              el('td', {}, pin(synth.connector, route.to)))))))));
  }
}

function pin(connector, number) {
  if (number === undefined || number === null) return '–';
  const words = typeof number === 'object' ? Object.values(number).join(' ') : String(number);
  const role = connector?.pins?.[words]?.role;
  return role ? [words, ' ', el('span', { class: 'pencil' }, roleWords(role))] : words;
}

function through(route) {
  const via = route.via ?? route.through ?? route.kind ?? route.type;
  return typeof via === 'object' && via !== null ? via.kind ?? via.type ?? 'straight' : via ?? 'straight';
}
