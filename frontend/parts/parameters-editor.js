/**
 * parameters-editor.js: one group of a synth's words (its straight sound, a voice, one kind of effect).
 *
 *   const editor = ParametersEditor(element, { read: () => content.vocabulary.voice, edit: (change) => keeping.change(…) });
 *   editor.update();
 *
 * `read` gives the group's parameters by key; `edit(change)` hands them to `change` to be altered in place.
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { inOrder, nextOrder } from '../order-rules.js';
import { TYPES, choicesOf, extent, keyFor, missingInParameter, move, newParameter } from '../vocabulary-rules.js';
import { AddByName } from './add-by-name.js';
import { Fact } from './editable.js';

/**
 * @param {HTMLElement} element
 * @param {{ read: () => Record<string, any>, edit: (change: (parameters: Record<string, any>) => void) => void }} state
 */
export function ParametersEditor(element, { read, edit }) {
  const list = el('ul', { class: 'ruled parameters' });
  fill(element, list, AddByName({
    label: 'What can be set? Level, tone, …',
    onAdd: (label) => edit((parameters) => { parameters[keyFor(label, parameters)] = newParameter('range', label, nextOrder(parameters)); }),
  }));
  update();
  return { update };

  function update() {
    keyedList(list, inOrder(read()), (key) => key, Row, (row) => row.update());
  }

  function Row(key) {
    const parameter = () => read()[key];
    const set = (field) => (value) => edit((parameters) => { parameters[key][field] = value; });
    const name = el('span', { class: 'name' });
    const range = el('span', { class: 'pencil' });
    /** For the ear: which one a button is about. */
    const names = [];
    const which = () => names[names.push(el('span', { class: 'unseen' })) - 1];
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const facts = el('dl', { class: 'facts' });
    /** How it stood as each kind of parameter, for whoever picks another kind and comes back. */
    const known = {};
    const shows = [
      field('label', { label: 'Called', maxLength: 80, check: (value) => (value.trim() ? null : 'It needs a name.') }),
      field('type', { label: 'It is', kind: 'choice', choices: TYPES }, (type) => edit((parameters) => {
        const { label, order } = parameters[key];
        known[parameters[key].type] = parameters[key];
        parameters[key] = { ...known[type] ?? newParameter(type, label, order), label, order };
      })),
    ];
    const common = facts.childElementCount;
    let drawnType = '';
    let showsOfType = [];
    const row = el('details', { class: 'parameter' },
      el('summary', {}, name, range),
      facts,
      trouble,
      el('div', { class: 'buttons' },
        el('button', { type: 'button', on: { click: () => edit((parameters) => move(parameters, key, -1)) } }, 'Up', which()),
        el('button', { type: 'button', on: { click: () => edit((parameters) => move(parameters, key, 1)) } }, 'Down', which()),
        el('button', { type: 'button', class: 'quiet', on: { click: () => edit((parameters) => { delete parameters[key]; }) } }, 'Take out', which())));
    const element = el('li', {}, row);
    updateRow();
    return { element, update: updateRow };

    function updateRow() {
      name.textContent = parameter().label;
      for (const each of names) each.textContent = ` ${parameter().label}`;
      range.textContent = extent(parameter());
      trouble.textContent = missingInParameter(parameter()) ?? '';
      drawType(parameter().type);
      for (const show of [...shows, ...showsOfType]) show();
    }

    /** Another type needs other fields; those above stay, and whoever types in them. */
    function drawType(type) {
      if (type === drawnType) return;
      drawnType = type;
      while (facts.childElementCount > common) facts.lastElementChild.remove();
      showsOfType = fieldsOf(type);
    }

    function field(path, state, onEdit = set(path)) {
      const fact = Fact(facts, { ...state, value: parameter()[path], onEdit });
      return () => fact.show({ value: parameter()[path] });
    }

    function amount(path, label, unit) {
      return field(path, { label, unit, kind: 'number', check: (value) => (value === null ? 'Write a number.' : null) });
    }

    function fieldsOf(type) {
      if (type === 'range') return [amount('min', 'Least'), amount('max', 'Most'), amount('step', 'Step'), field('unit', { label: 'Unit', empty: 'none', maxLength: 20 })];
      if (type === 'time') return [amount('minMillis', 'Shortest', 'ms'), amount('maxMillis', 'Longest', 'ms')];
      if (type === 'choice') {
        const fact = Fact(facts, { label: 'Words', kind: 'long', value: parameter().choices.join(', '), help: 'with commas between them',
          check: (value) => (choicesOf(value).length ? null : 'Give at least one word.'),
          onEdit: (value) => set('choices')(choicesOf(value)) });
        return [() => fact.show({ value: parameter().choices.join(', ') })];
      }
      return [];
    }
  }
}
