/** member-list.js: who may read or write in the open notebook; its owners let others in and take rights away. */
import { get, put, remove } from '../api.js';
import { el } from '../dom.js';
import { me, meet } from '../me.js';
import { MAY_WORDS, askWords, isLastOwner, notYetMembers } from '../people-rules.js';
import { showNextNotebook } from '../tab-notebook.js';
import { asSentence } from '../words-rules.js';
import { opensFirst } from './menu-select.js';
import { Redrawn } from './redrawn.js';
import { say } from './status-line.js';
import { SureButton } from './sure-button.js';

/** For a notebook that is open; several people must be able to sign in. */
export function MemberList() {
  const { notebook } = me();
  const address = `/api/notebooks/${notebook.id}/members`;
  const part = Redrawn('Who may read and write in it', async () => {
    const owns = me().notebook.may === 'own';
    const [{ items: members }, { items: players }] = await Promise.all([get(address), owns ? get('/api/players') : { items: [] }]);
    return [
      el('p', { class: 'pencil' }, `In “${me().notebook.title}”. Whoever may write may also hand out links to read.`),
      el('ul', { class: 'ruled people-list' }, members.map((member) => line(member, members, owns))),
      owns ? letIn(notYetMembers(players, members)) : el('p', { class: 'told' }, `Only an owner lets others in. ${askWords(me().notebook)}`),
    ];
  });
  return part;

  function line(member, members, owns) {
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const isMe = member.player === me().id;
    const stays = isLastOwner(member, members);
    return el('li', {},
      el('span', { class: 'name' }, member.name, isMe ? el('span', { class: 'pencil' }, ' (you)') : null),
      owns && !stays ? mayChoice(member, trouble) : el('span', { class: 'may' }, MAY_WORDS[member.may]),
      stays || !(owns || isMe) ? null : SureButton(isMe
        ? { word: 'Leave', question: 'Really leave this notebook?', act: leave, trouble }
        : { word: 'Take away', about: `what ${member.name} may`, question: `${member.name} may not even read it then. Really?`, act: () => takeAway(member), trouble }),
      trouble);
  }

  function mayChoice(member, trouble) {
    const select = el('select', { id: `may-${member.player}`, 'aria-label': `What ${member.name} may`, on: { change: change } },
      Object.entries(MAY_WORDS).map(([may, words]) => el('option', { value: may, selected: may === member.may }, words)));
    opensFirst(select);
    return select;

    async function change() {
      try {
        await put(`${address}/${member.player}`, { may: select.value });
        await changed(`${member.name} ${MAY_WORDS[select.value]} now.`);
      } catch (failure) {
        select.value = member.may;
        trouble.textContent = asSentence(failure.message);
      }
    }
  }

  function letIn(players) {
    if (players.length === 0) return el('p', { class: 'pencil' }, 'Everybody who plays here is in already.');
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const who = el('select', { id: 'let-in' }, players.map(({ id, name }) => el('option', { value: id }, name)));
    const may = el('select', { 'aria-label': 'What they may' }, Object.entries(MAY_WORDS).map(([right, words]) => el('option', { value: right }, words)));
    return el('form', { class: 'one-line', on: { submit: send } },
      el('label', { class: 'label', for: 'let-in' }, 'Let somebody in'),
      el('div', { class: 'row' }, who, may, el('button', { type: 'submit' }, 'Let in')),
      trouble);

    async function send(event) {
      event.preventDefault();
      const { name } = players.find(({ id }) => id === who.value);
      try {
        await put(`${address}/${who.value}`, { may: may.value });
        await changed(`${name} ${MAY_WORDS[may.value]} now.`);
      } catch (failure) {
        trouble.textContent = asSentence(failure.message);
      }
    }
  }

  async function takeAway(member) {
    await remove(`${address}/${member.player}`);
    await changed(`${member.name} may not read “${notebook.title}” any more.`);
  }

  async function leave() {
    await remove(`${address}/${me().id}`);
    showNextNotebook('');
    location.reload();
  }

  async function changed(words) {
    await meet();
    await part.redraw();
    say(words);
  }
}
