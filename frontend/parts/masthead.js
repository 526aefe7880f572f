/**
 * masthead.js: the name of the notebook and its rooms, as stopped notes on one string: the dot is where you are.
 * At phone width the string lies at the bottom, under the thumb. Also the last lines of every page (Colophon).
 */
import { el, fill } from '../dom.js';
import { onDraftsChange, playerName, rememberPlayerName } from '../drafts.js';
import { FURTHER_ROOMS, KIND_WORDS, ROOMS, sheetAddress } from '../places-rules.js';
import { resendWaiting, waitingDrafts } from '../resend.js';
import { counted } from '../words-rules.js';
import { ArchiveDialog } from './archive-dialog.js';
import { FindDialog } from './find-dialog.js';
import { say } from './status-line.js';

/** @param {HTMLElement} element @param {{ room?: string }} state */
export function Masthead(element, { room }) {
  const find = FindDialog();
  const further = el('details', { class: 'further' },
    el('summary', { 'aria-label': 'More pages' }, 'More'),
    el('ul', {},
      FURTHER_ROOMS.map((entry) => el('li', {}, roomLink(entry, room))),
      el('li', {}, el('button', { type: 'button', on: { click: () => ArchiveDialog().open() } }, 'Take along, bring in'))));
  further.classList.toggle('here', FURTHER_ROOMS.some(([name]) => name === room));
  addEventListener('click', (event) => {
    if (!further.contains(/** @type {Node} */ (event.target))) further.open = false;
  });
  further.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || !further.open) return;
    further.open = false;
    further.querySelector('summary').focus();
  });
  fill(element,
    el('a', { class: 'wordmark', href: '/' }, 'Rosinbook'),
    el('nav', { class: 'rooms', 'aria-label': 'Pages' },
      el('ul', {},
        ROOMS.map((entry) => el('li', { class: entry[0] === 'recipes' ? 'roomy' : null }, roomLink(entry, room))),
        el('li', {}, further))),
    el('button', { type: 'button', class: 'quiet find', on: { click: () => find.open() } }, 'Find'));
  const roomyOnly = el('li', { class: 'narrow' }, roomLink(ROOMS.find(([name]) => name === 'recipes'), room));
  further.querySelector('ul').prepend(roomyOnly);
}

function roomLink([name, href, word], room) {
  return el('a', { href, 'aria-current': name === room ? 'page' : null }, word);
}

/**
 * @param {HTMLElement} element
 * @returns {{ look: () => Promise<void> }} look: after the page is drawn, sends what waits and shows what remains
 */
export function Colophon(element) {
  const waiting = el('div', { class: 'waiting' });
  const name = el('input', {
    value: playerName(), maxlength: 100, autocomplete: 'given-name', id: 'player-name', placeholder: 'nobody yet',
    on: { change: (event) => rememberPlayerName(event.target.value) },
  });
  fill(element,
    waiting,
    el('p', { class: 'signed' }, el('label', { for: 'player-name' }, 'What you save is signed by '), name));
  return { look };

  async function look() {
    update();
    onDraftsChange(update);
    addEventListener('online', send);
    await send();
  }

  async function send() {
    const sent = await resendWaiting();
    if (sent) say(`${counted(sent, 'sheet')} that waited on this device ${sent === 1 ? 'is' : 'are'} in the notebook now.`);
    update();
  }

  function update() {
    const drafts = waitingDrafts();
    fill(waiting, drafts.length === 0 ? null : [
      el('p', {}, 'Only on this device so far:'),
      el('ul', {}, drafts.map((draft) => el('li', {}, el('a', { href: addressOf(draft) }, draft.content.title || `a ${KIND_WORDS[draft.kind] ?? 'sheet'} without a name`)))),
    ]);
  }
}

function addressOf(draft) {
  if (draft.kind === 'log') return '/log';
  return draft.baseRevision === 0 ? `/new/${draft.kind}` : sheetAddress(draft.kind, draft.id);
}
