/**
 * connector-editor.js: a plug or socket, pin by pin, each with what it carries; "not known yet" is an answer too.
 *
 *   const connector = ConnectorEditor(element, { keeping, shapes, lines: () => ['volume'] });
 *   connector.update();
 *
 * It edits keeping.content.connector. shapes: items of /api/shapes; lines: keys of the control lines, if there are any.
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { Editable, Fact } from './editable.js';
import { ROLES, newRole, nextPin, pinOrder } from './connector-rules.js';

/** @param {HTMLElement} element @param {{ keeping: import('../save.js').Keeping, shapes: any[], lines?: () => string[] }} state */
export function ConnectorEditor(element, { keeping, shapes, lines = () => [] }) {
  const start = el('div', { class: 'buttons' }, shapes.map((shape) => el('button', { type: 'button', on: { click: () => begin(shape) } }, shape.label)));
  const facts = el('dl', { class: 'facts' });
  const list = el('ol', { class: 'ruled pins' });
  const edit = (change) => keeping.change((content) => change(content.connector));
  const name = Fact(facts, { label: 'Called', value: '', empty: 'give it a name', maxLength: 80, onEdit: (value) => edit((connector) => { connector.name = value; }) });
  const shape = Fact(facts, { label: 'Looks like', value: '', empty: 'say what it looks like', maxLength: 80, onEdit: (value) => edit((connector) => { connector.shape = value; }) });
  const described = el('div', {},
    facts,
    list,
    el('div', { class: 'buttons' },
      el('button', { type: 'button', on: { click: addPin } }, 'Another pin'),
      el('button', { type: 'button', class: 'quiet', on: { click: takeOut } }, 'Take the connector out')),
    el('p', { class: 'help' }, 'Before you measure or solder at a supply pin: power off, and when in doubt ask a qualified technician. A rail on the wrong pin destroys electronics.'));
  const none = el('div', {}, el('p', { class: 'pencil' }, 'Nothing is written about it yet. What does it look like?'), start);
  element.classList.add('connector-editor');
  fill(element, none, described);
  update();
  return { update };

  function begin({ connector }) {
    keeping.change((content) => {
      content.connector = structuredClone(connector);
      if (Object.keys(content.connector.pins ?? {}).length === 0) content.connector.pins = { 1: { role: { carries: 'unknown' }, note: '' } };
    });
  }

  function takeOut() {
    keeping.change((content) => { delete content.connector; });
  }

  function addPin() {
    edit(({ pins }) => { pins[nextPin(pins)] = { role: { carries: 'unknown' }, note: '' }; });
  }

  function update() {
    const { connector } = keeping.content;
    none.hidden = Boolean(connector);
    described.hidden = !connector;
    if (!connector) return;
    name.show({ value: connector.name ?? '' });
    shape.show({ value: connector.shape ?? '' });
    keyedList(list, pinOrder(connector.pins), (label) => label, (label) => PinLine(label), (line) => line.update());
  }

  function PinLine(label) {
    const pin = () => keeping.content.connector.pins[label];
    const change = (next) => edit(({ pins }) => next(pins[label]));
    const carries = el('select', { 'aria-label': `Pin ${label} carries` }, ROLES.map(([value, words]) => el('option', { value }, words)));
    carries.addEventListener('change', () => change((each) => {
      each.role = newRole(carries.value, { lines: lines(), takenStrings: Object.values(keeping.content.connector.pins).filter(({ role }) => role.carries === 'string').map(({ role }) => role.string) });
    }));
    const detail = el('span', { class: 'detail' });
    const note = Editable(el('span', { class: 'remark' }), { label: `Note on pin ${label}`, value: '', empty: 'note', maxLength: 300, onEdit: (value) => change((each) => { each.note = value; }) });
    const remove = el('button', { type: 'button', class: 'quiet', 'aria-label': `Take out pin ${label}`, on: { click: () => edit(({ pins }) => { delete pins[label]; }) } }, 'take out');
    const line = el('li', { class: 'pin' }, el('b', { class: 'pin-label' }, el('span', { class: 'unseen' }, 'Pin '), label), carries, detail, note.element, remove);
    let drawn = '';
    let shows = () => {};
    showPin();
    return { element: line, update: showPin };

    function showPin() {
      const { role, note: words } = pin();
      carries.value = role.carries;
      line.classList.toggle('unknown', role.carries === 'unknown');
      note.show({ value: words ?? '' });
      if (drawn !== role.carries) {
        drawn = role.carries;
        shows = drawDetail(role.carries);
      }
      shows();
    }

    function drawDetail(kind) {
      const set = (field) => (value) => change(({ role }) => { role[field] = value ?? undefined; });
      const field = {
        string: { label: `Pin ${label}: which string`, kind: 'number', min: 1, max: 12, field: 'string' },
        supply: { label: `Pin ${label}: volts`, kind: 'number', unit: 'V', min: -60, max: 60, empty: 'volts?', field: 'volts' },
        control: { label: `Pin ${label}: which line`, field: 'line', empty: 'which line?', maxLength: 40 },
        switch: { label: `Pin ${label}: which line`, field: 'line', empty: 'which line?', maxLength: 40 },
      }[kind];
      fill(detail);
      if (!field) return () => {};
      const offered = () => {
        const known = kind === 'control' || kind === 'switch' ? lines() : [];
        return known.length ? { kind: 'choice', choices: known.map((each) => [each, each]) } : {};
      };
      const place = el('span');
      detail.append(place);
      const value = () => pin().role[field.field] ?? null;
      const editable = Editable(place, {
        ...field, ...offered(), value: value(),
        onEdit: set(field.field),
      });
      return () => editable.show({ kind: field.kind, ...offered(), value: value() });
    }
  }
}
