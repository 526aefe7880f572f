/**
 * archive-dialog.js: the whole notebook to take along as one ZIP of readable JSON, and one to bring in.
 *
 *   ArchiveDialog().open();
 */
import { postFile } from '../api.js';
import { el } from '../dom.js';
import { fileAddress } from '../tab-notebook.js';
import { Backups } from './backups.js';
import { counted } from '../words-rules.js';
import { instead } from './reading-only.js';

/** @returns {{ open: () => void }} */
export function ArchiveDialog() {
  const outcome = el('p', { role: 'status' });
  const file = el('input', { type: 'file', accept: '.zip,application/zip', 'aria-label': 'A notebook to bring in', on: { change: bringIn } });
  const dialog = el('dialog', { class: 'archive-dialog', 'aria-labelledby': 'archive-title' },
    el('h2', { id: 'archive-title' }, 'Take along, bring in'),
    el('p', {}, 'Every sheet with every revision, in one file that can be read without Rosinbook.'),
    el('div', { class: 'buttons' }, el('a', { class: 'button inked', href: fileAddress('/api/export'), download: '' }, 'Take everything along')),
    instead(),
    el('label', { class: 'field writes' }, el('span', { class: 'label' }, 'Bring in a notebook that was taken along'), file,
      el('span', { class: 'help' }, 'What is here already stays as it is; bringing it in twice changes nothing.')),
    outcome,
    Backups(),
    el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, 'Close')));
  dialog.addEventListener('close', () => dialog.remove());
  return {
    open() {
      document.body.append(dialog);
      dialog.showModal();
    },
  };

  async function bringIn() {
    if (!file.files?.[0]) return;
    outcome.textContent = 'Reading …';
    try {
      const { added, known } = await postFile('/api/import', file.files[0], 'application/zip');
      outcome.textContent = `${counted(added, 'revision')} new, ${known} known already.`;
    } catch (failure) {
      outcome.textContent = failure.message;
    }
    file.value = '';
  }
}
