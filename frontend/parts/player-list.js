/** player-list.js: for the keeper: who plays here; inviting, inviting again, closing an account. */
import { get, post, remove } from '../api.js';
import { el } from '../dom.js';
import { me } from '../me.js';
import { asSentence } from '../words-rules.js';
import { CloseAccountDialog } from './close-account-dialog.js';
import { InvitationDialog } from './invitation-dialog.js';
import { OneLineForm } from './one-line-form.js';
import { Redrawn } from './redrawn.js';
import { say } from './status-line.js';

/** Most characters of a name; openapi.json says the same. */
const LONGEST_NAME = 60;

/** @param {{ onChanged: () => void }} around when there is one player more or less */
export function PlayerList({ onChanged }) {
  /** Players for whom an invitation is being made: pressing twice makes one. @type {Set<string>} */
  const asked = new Set();
  const part = Redrawn('Players', async () => {
    const { items } = await get('/api/players');
    return [
      el('p', { class: 'pencil' }, 'Seen by you alone, who keep this place.'),
      el('ul', { class: 'ruled people-list' }, items.map(line)),
      OneLineForm({
        id: 'invite', label: 'Invite a player', word: 'Make the invitation', maxlength: LONGEST_NAME, act: invite,
        help: 'By the name they will sign in with. You get a link to give them; they choose their own passphrase, and get a notebook of their own.',
      }),
    ];
  });
  return part;

  function line(player) {
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const isMe = player.id === me().id;
    return el('li', {},
      el('span', { class: 'name' }, player.name, isMe ? el('span', { class: 'pencil' }, ' (you)') : null),
      el('span', { class: 'pencil' }, player.keeper ? 'keeper' : player.joined ? 'has joined' : 'invited, not here yet'),
      isMe ? null : el('span', { class: 'ways' },
        el('button', { type: 'button', class: 'quiet', id: `invite-${player.id}`, on: { click: () => inviteAgain(player, trouble) } },
          player.joined ? 'Passphrase forgotten' : 'New invitation', el('span', { class: 'unseen' }, ` ${player.joined ? 'by' : 'for'} ${player.name}`)),
        player.keeper ? null : el('button', { type: 'button', class: 'quiet', on: { click: () => CloseAccountDialog({ player, close: () => close(player) }).open() } },
          'Close the account', el('span', { class: 'unseen' }, ` of ${player.name}`))),
      trouble);
  }

  async function invite(name) {
    const invitation = await post('/api/players', { name });
    try {
      await part.redraw();
      onChanged();
    } finally {
      // Whatever else fails: the link is shown this once.
      InvitationDialog({ ...invitation, isForgotten: false }).open();
    }
  }

  async function inviteAgain(player, trouble) {
    if (asked.has(player.id)) return;
    asked.add(player.id);
    trouble.textContent = '';
    try {
      InvitationDialog({ ...await post(`/api/players/${player.id}/invitation`), isForgotten: player.joined }).open();
    } catch (failure) {
      trouble.textContent = asSentence(failure.message);
    } finally {
      asked.delete(player.id);
    }
  }

  async function close(player) {
    await remove(`/api/players/${player.id}`);
    await part.redraw();
    onChanged();
    say(`${player.name}’s account is closed.`);
  }
}
