/**
 * control-lines-editor.js: the voltages a synth reads, and what stretches of them mean.
 *
 *   const lines = ControlLinesEditor(element, { keeping });
 *   lines.update();
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { keyFor } from '../vocabulary-rules.js';
import { AddByName } from './add-by-name.js';
import { Editable, Fact } from './editable.js';

/** @param {HTMLElement} element @param {{ keeping: import('../save.js').Keeping }} state */
export function ControlLinesEditor(element, { keeping }) {
  const list = el('div');
  fill(element,
    el('p', { class: 'pencil' }, 'Volume wheels, switches and “which instrument is this” are often read as a voltage. Write down what is known.'),
    list,
    AddByName({ label: 'A control line: volume, select, …', onAdd: (label) => edit((lines) => { lines[keyFor(label, lines)] = { label, minVolts: 0, maxVolts: 5, bands: [] }; }) }));
  update();
  return { update };

  function read() {
    return keeping.content.controlLines ?? {};
  }

  function edit(change) {
    keeping.change((content) => {
      content.controlLines ??= {};
      change(content.controlLines);
    });
  }

  function update() {
    keyedList(list, Object.keys(read()).sort(), (key) => key, Line, (line) => line.update());
  }

  function Line(key) {
    const line = () => read()[key];
    const facts = el('dl', { class: 'facts' });
    const bands = el('ul', { class: 'ruled bands' });
    const set = (field) => (value) => edit((lines) => { lines[key][field] = value ?? undefined; });
    const needed = (value) => (value === null || value === '' ? 'This is needed.' : null);
    const shown = [
      fact('label', { label: 'Called', maxLength: 80, check: needed }),
      fact('minVolts', { label: 'Lowest', kind: 'number', unit: 'V', min: -60, max: 60, check: needed }),
      fact('maxVolts', { label: 'Highest', kind: 'number', unit: 'V', min: -60, max: 60, check: needed }),
      fact('loadOhms', { label: 'Load inside', kind: 'number', unit: 'Ω', min: 0.001, max: 1e9, empty: 'not known' }),
    ];
    const element = el('section', { class: 'control-line keep-together' }, facts, bands,
      el('div', { class: 'buttons' },
        el('button', { type: 'button', on: { click: addBand } }, 'A band'),
        el('button', { type: 'button', class: 'quiet', on: { click: () => edit((lines) => { delete lines[key]; }) } }, 'Take the line out')));
    updateLine();
    return { element, update: updateLine };

    function fact(field, state) {
      const part = Fact(facts, { ...state, value: line()[field] ?? null, onEdit: set(field) });
      return () => part.show({ value: line()[field] ?? null });
    }

    function addBand() {
      edit((lines) => {
        const each = lines[key];
        each.bands ??= [];
        const from = each.bands.length ? each.bands.at(-1).toVolts : each.minVolts;
        each.bands.push({ fromVolts: from, toVolts: each.maxVolts, meaning: 'not known' });
      });
    }

    function updateLine() {
      for (const show of shown) show();
      keyedList(bands, line().bands ?? [], (_, index) => String(index), (_, index) => Band(index), (band) => band.update());
    }

    function Band(index) {
      const band = () => line().bands[index];
      const change = (field) => (value) => edit((lines) => { lines[key].bands[index][field] = value; });
      const from = Editable(el('span'), { label: 'From', kind: 'number', unit: 'V', min: -60, max: 60, value: 0, check: needed, onEdit: change('fromVolts') });
      const to = Editable(el('span'), { label: 'To', kind: 'number', unit: 'V', min: -60, max: 60, value: 0, check: needed, onEdit: change('toVolts') });
      const meaning = Editable(el('span', { class: 'meaning' }), { label: 'Means', value: '', maxLength: 80, check: needed, onEdit: change('meaning') });
      const which = el('span', { class: 'unseen' });
      const row = el('li', { class: 'band' }, from.element, el('span', { class: 'pencil' }, 'to'), to.element, meaning.element,
        el('button', { type: 'button', class: 'quiet', on: { click: () => edit((lines) => lines[key].bands.splice(index, 1)) } }, 'take out', which));
      updateBand();
      return { element: row, update: updateBand };

      function updateBand() {
        from.show({ value: band().fromVolts });
        to.show({ value: band().toVolts });
        meaning.show({ value: band().meaning });
        which.textContent = ` ${band().meaning}`;
      }
    }
  }
}
