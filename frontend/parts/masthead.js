/**
 * masthead.js: the name of the notebook and its rooms, as stopped notes on one string: the dot is where you are.
 * Beneath the name stands which notebook is open, where there is a choice, and that it can only be read, where that is so.
 * At phone width the string lies at the bottom, under the thumb. Also the last lines of every page (Colophon).
 */
import { el, fill } from '../dom.js';
import { onDraftsChange, playerName, rememberPlayerName } from '../drafts.js';
import { me, mayWrite, onMe } from '../me.js';
import { FURTHER_ROOMS, KIND_WORDS, ROOMS, sheetAddress } from '../places-rules.js';
import { resendWaiting, waitingDrafts } from '../resend.js';
import { counted, shortDay } from '../words-rules.js';
import { FindDialog } from './find-dialog.js';
import { say } from './status-line.js';

/** @param {HTMLElement} element @param {{ room?: string }} state */
export function Masthead(element, { room }) {
  const find = FindDialog();
  const open = el('p', { class: 'open-notebook' });
  const further = el('details', { class: 'further' },
    el('summary', { 'aria-label': 'More pages' }, 'More'),
    el('ul', {},
      FURTHER_ROOMS.map((entry) => el('li', {}, roomLink(entry, room))),
      el('li', {}, el('button', { type: 'button', on: { click: takeAlong } }, 'Take along, bring in'))));
  further.classList.toggle('here', FURTHER_ROOMS.some(([name]) => name === room));
  addEventListener('click', (event) => {
    if (!further.contains(/** @type {Node} */ (event.target))) further.open = false;
  });
  further.addEventListener('keydown', (event) => {
    if (event.key !== 'Escape' || !further.open) return;
    further.open = false;
    further.querySelector('summary').focus();
  });
  further.addEventListener('focusout', ({ relatedTarget }) => {
    if (relatedTarget instanceof Node && !further.contains(relatedTarget)) further.open = false;
  });
  fill(element,
    el('div', { class: 'name' }, el('a', { class: 'wordmark', href: '/' }, 'Rosinbook'), open),
    el('nav', { class: 'rooms', 'aria-label': 'Pages' },
      el('ul', {},
        ROOMS.map((entry) => el('li', { class: entry[0] === 'recipes' ? 'roomy' : null }, roomLink(entry, room))),
        el('li', {}, further))),
    el('button', { type: 'button', class: 'quiet find', on: { click: () => find.open() } }, 'Find'));
  const roomyOnly = el('li', { class: 'narrow' }, roomLink(ROOMS.find(([name]) => name === 'recipes'), room));
  further.querySelector('ul').prepend(roomyOnly);
  onMe(() => fill(open, openNotebook(room)));
}

async function takeAlong() {
  try {
    const { ArchiveDialog } = await import('./archive-dialog.js');
    if (!document.querySelector('dialog[open]')) ArchiveDialog().open();
  } catch {
    say('The notebook is out of reach: what it takes to pack it could not be read. Try again in a moment.');
  }
}

function openNotebook(room) {
  const { notebook, notebooks } = me();
  return [
    notebook && notebooks.length > 1
      ? el('a', { href: '/people', title: `${notebook.title}: other notebooks`, 'aria-current': room === 'people' ? 'page' : null },
        el('span', { class: 'unseen' }, 'The open notebook: '), notebook.title)
      : null,
    mayWrite() ? null : el('span', { class: 'reading-mark' }, 'reading only'),
  ];
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
  const signed = el('p', { class: 'signed' }, el('label', { for: 'player-name' }, 'What you save is signed by '), name);
  fill(element, waiting, signed);
  // Whoever has signed in is named as who they are.
  onMe(() => { if (me().name) fill(signed, `What you save is signed by ${me().name}.`); });
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
      el('ul', {}, drafts.map((draft) => el('li', {}, el('a', { href: addressOf(draft) }, wordsOf(draft))))),
    ]);
  }
}

/** Where its words can be seen and go on. */
function addressOf({ kind, id, baseRevision, extra, wanted }) {
  if (extra.log) return `/new/log?rig=${encodeURIComponent(id)}`;
  // The page for new ones is there for the next.
  if (baseRevision > 0 || (wanted && kind !== 'log')) return sheetAddress(kind, id);
  return kind === 'log' ? '/log' : `/new/${kind}`;
}

function wordsOf({ kind, content, extra }) {
  if (extra.log) return `A rehearsal with ${content.title}`;
  if (kind === 'log') return `A log entry of ${shortDay(content.date)}`;
  return content.title || `a ${KIND_WORDS[kind] ?? 'sheet'} without a name`;
}
