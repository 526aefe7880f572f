/**
 * invitation-dialog.js: the link by which a player joins, or chooses a new passphrase. Shown once; the notebook keeps only what is
 * needed to recognise it.
 *
 *   InvitationDialog({ name, invitation, endsAt, isForgotten: false }).open();
 */
import { el } from '../dom.js';
import { invitationWords } from '../people-rules.js';
import { CopyLink } from './copy-link.js';

/** @param {{ name: string, invitation: string, endsAt: string, isForgotten: boolean }} state */
export function InvitationDialog({ name, invitation, endsAt, isForgotten }) {
  const link = CopyLink(invitation);
  const dialog = el('dialog', { class: 'invitation-dialog', 'aria-labelledby': 'invitation-title' },
    el('h2', { id: 'invitation-title' }, `${name}: the invitation`),
    el('p', {}, `Give this link to ${name} and to nobody else: whoever opens it chooses the passphrase. ${invitationWords({ endsAt })}`),
    link.field,
    el('p', { class: 'help' }, isForgotten
      ? 'It is shown this once. The old passphrase works until the link is used; then every sign-in of before has ended.'
      : 'It is shown this once; make a new one if it gets lost.'),
    el('form', { method: 'dialog', class: 'buttons' }, link.button, el('button', {}, 'Done'), link.said));
  link.field.classList.add('link');
  dialog.addEventListener('close', () => dialog.remove());
  return {
    open() {
      document.body.append(dialog);
      dialog.showModal();
    },
  };
}
