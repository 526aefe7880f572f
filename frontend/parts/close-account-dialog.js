/**
 * close-account-dialog.js: asks before an account is closed, and says what stays.
 *
 *   CloseAccountDialog({ player, close: async () => { … } }).open();
 */
import { el } from '../dom.js';
import { asSentence } from '../words-rules.js';

/** @param {{ player: import('../people-rules.js').Player, close: () => Promise<void> }} state */
export function CloseAccountDialog({ player: { name }, close }) {
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  const button = el('button', { type: 'submit', class: 'inked' }, 'Close the account');
  const dialog = el('dialog', { 'aria-labelledby': 'close-account-title' },
    el('form', { on: { submit: send } },
      el('h2', { id: 'close-account-title' }, `Close ${name}’s account?`),
      el('p', {}, `${name} is signed out everywhere at once and cannot come back. That cannot be undone.`),
      el('p', {}, `What ${name} wrote stays, under that name. Notebooks that nobody else owns are yours from then on; links that were handed out go on opening until they are closed.`),
      trouble,
      el('div', { class: 'buttons' }, button, el('button', { type: 'button', class: 'quiet', on: { click: () => dialog.close() } }, 'Leave it open'))));
  dialog.addEventListener('close', () => dialog.remove());
  return {
    open() {
      document.body.append(dialog);
      dialog.showModal();
    },
  };

  async function send(event) {
    event.preventDefault();
    button.disabled = true;
    try {
      await close();
      dialog.close();
    } catch (failure) {
      button.disabled = false;
      trouble.textContent = asSentence(failure.message);
    }
  }
}
