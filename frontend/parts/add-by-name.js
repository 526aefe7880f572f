/**
 * add-by-name.js: a field and a button: a new thing begins with its name.
 *
 *   element.append(AddByName({ label: 'New parameter', onAdd: (name) => { … } }));
 */
import { el } from '../dom.js';

/** @param {{ label: string, word?: string, onAdd: (name: string) => void }} state */
export function AddByName({ label, word = 'Add', onAdd }) {
  const input = el('input', { placeholder: label, 'aria-label': label, maxlength: 80, autocomplete: 'off' });
  const add = () => {
    const name = input.value.trim();
    if (name) onAdd(name);
    input.value = '';
    input.focus();
  };
  input.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    add();
  });
  return el('div', { class: 'add-by-name' }, input, el('button', { type: 'button', on: { click: add } }, word));
}
