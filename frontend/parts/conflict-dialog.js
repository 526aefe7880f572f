/**
 * conflict-dialog.js: two people changed the same place. Both values stand side by side; the player chooses for each.
 * Closing it decides nothing: the draft stays.
 */
import { el, fill } from '../dom.js';

/** @param {{ onChoice: (choices: ('yours' | 'theirs')[]) => void }} state */
export function ConflictDialog({ onChoice }) {
  const places = el('div');
  const form = el('form', { method: 'dialog' },
    el('h2', { id: 'conflict-title' }, 'Which one holds?'),
    el('p', {}, 'While you were writing, somebody else saved the same place. Everything else from both of you is kept.'),
    places,
    el('div', { class: 'buttons' },
      el('button', { class: 'inked', value: 'keep' }, 'Keep these and save'),
      el('button', { class: 'quiet', value: 'later', formnovalidate: true }, 'Decide later')));
  const dialog = el('dialog', { class: 'conflict-dialog', 'aria-labelledby': 'conflict-title' }, form);
  document.body.append(dialog);
  let count = 0;
  dialog.addEventListener('close', () => {
    if (dialog.returnValue !== 'keep') return;
    const chosen = new FormData(form);
    onChoice(Array.from({ length: count }, (_, index) => (chosen.get(`place-${index}`) === 'theirs' ? 'theirs' : 'yours')));
  });
  return {
    /** @param {import('../save-rules.js').Conflict[]} conflicts */
    open(conflicts) {
      if (dialog.open) return;
      count = conflicts.length;
      fill(places, conflicts.map(place));
      dialog.returnValue = '';
      dialog.showModal();
    },
  };
}

function place(conflict, index) {
  return el('fieldset', { class: 'choice' },
    el('legend', {}, conflict.where.join(', ') || 'The whole sheet'),
    el('span', { class: 'before' }, 'Before: ', written(conflict.baseText, conflict.base)),
    side(index, 'yours', 'Yours', written(conflict.yoursText, conflict.yours)),
    side(index, 'theirs', 'Saved meanwhile', written(conflict.theirsText, conflict.theirs)));
}

function side(index, value, title, words) {
  return el('label', {},
    el('input', { type: 'radio', name: `place-${index}`, value, required: true }),
    el('span', { class: 'pencil' }, title),
    el('span', { class: 'worth' }, words));
}

function written(text, value) {
  if (text) return text;
  if (value === undefined || value === null) return 'left out';
  return typeof value === 'object' ? JSON.stringify(value) : String(value) || 'empty';
}
