/**
 * menu-select.js: a list of things to do, from which one is chosen; afterwards it stands as before.
 *
 *   const menu = MenuSelect({ word: 'put in …', label: 'Put a setting in', onChoose: (value) => { … } });
 *   menu.offer([['level', 'Level'], …]);   // menu.element goes onto the page
 *
 * A native select. The keyboard opens it first: going through it with the arrow keys must not yet choose.
 */
import { el, fill } from '../dom.js';

/** @param {{ word: string, label: string, onChoose: (value: string) => void }} state */
export function MenuSelect({ word, label, onChoose }) {
  const element = el('select', { class: 'menu-select', 'aria-label': label });
  element.addEventListener('change', () => {
    const { value } = element;
    element.selectedIndex = 0;
    onChoose(value);
  });
  opensFirst(element);
  return {
    element,
    /** @param {[string, string][]} entries value and words */
    offer(entries) {
      fill(element, el('option', { value: '', selected: true, disabled: true, hidden: true }, word), entries.map(([value, words]) => el('option', { value }, words)));
      element.selectedIndex = 0;
    },
  };
}

/**
 * Lets the keyboard open a select before it chooses, where choosing does something at once.
 *
 * @param {HTMLSelectElement} select
 */
export function opensFirst(select) {
  select.addEventListener('keydown', (event) => {
    const wouldChoose = event.key.length === 1 || ['ArrowDown', 'ArrowUp', 'Home', 'End', 'PageUp', 'PageDown'].includes(event.key);
    if (!wouldChoose || event.ctrlKey || event.metaKey || event.altKey || !select.showPicker) return;
    event.preventDefault();
    select.showPicker();
  });
}
