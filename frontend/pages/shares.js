/** shares.js: what was handed out: to whom, what they see, for how long, and when it was last opened. */
import { get, remove } from '../api.js';
import { el, fill } from '../dom.js';
import { PageHead } from '../parts/page-head.js';
import { SureButton } from '../parts/sure-button.js';
import { KIND_WORDS, sheetAddress } from '../places-rules.js';
import { moment } from '../words-rules.js';
import { openedWords, untilWords } from './shares-rules.js';

export async function show(page) {
  page.title('Shares');
  PageHead(page.leaf, { title: 'Shares', lead: 'Links that open one thing, to read and nothing else.' });
  const place = el('div');
  page.leaf.append(place, el('p', { class: 'help' }, 'A new link is made on the page of a set, a recipe or a rig. It is shown once; a lost link cannot be read again, only closed and replaced.'));
  await draw();

  async function draw() {
    const { items } = await get('/api/shares');
    const open = items.filter(({ state }) => state === 'open');
    const closed = items.filter(({ state }) => state !== 'open');
    fill(place,
      items.length === 0 ? el('p', {}, 'Nothing is shared.') : null,
      open.length ? el('ul', { class: 'ruled share-list' }, open.map(entry)) : null,
      closed.length ? el('details', { class: 'fold' }, el('summary', {}, el('h2', {}, 'Closed'), el('span', { class: 'pencil' }, String(closed.length))),
        el('ul', { class: 'ruled share-list' }, closed.map(entry))) : null);
  }

  function entry(share) {
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    return el('li', { class: share.state },
      el('div', { class: 'share-line' },
        el('span', { class: 'name' }, share.name || 'Without a name'),
        el('span', { class: 'state' }, { open: 'open', expired: 'run out', revoked: 'revoked' }[share.state] ?? share.state)),
      el('p', {}, `the ${KIND_WORDS[share.kind] ?? 'sheet'} `, el('a', { href: sheetAddress(share.kind, share.sheetId, share.revision) }, share.title),
        el('span', { class: 'pencil' }, share.revision ? `, as it was at revision ${share.revision}` : ', kept up to date')),
      el('p', { class: 'pencil small' }, [openedWords(share), share.state === 'revoked' ? `revoked ${moment(share.revokedAt)}` : untilWords(share), `made ${moment(share.createdAt)}`].join(' · ')),
      share.state === 'open' ? revokeButton(share, trouble) : null,
      trouble);
  }

  function revokeButton(share, trouble) {
    const button = SureButton({ word: 'Revoke', about: share.name, question: 'Really close this link for good?', trouble, act: async () => {
      await remove(`/api/shares/${encodeURIComponent(share.id)}`);
      await draw();
      page.say(`“${share.name}” opens nothing any more.`);
    } });
    button.classList.add('writes');
    return button;
  }
}
