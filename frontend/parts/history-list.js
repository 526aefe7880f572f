/**
 * history-list.js: the revisions of a sheet, newest first, each with what it changed, how to look at it and how to go back.
 *
 *   HistoryList(element, { kind: 'rigs', id, current: 7, onRestored: () => location.reload() })
 */
import { actOnSheet, get } from '../api.js';
import { el, fill } from '../dom.js';
import { compareAddress, sheetAddress } from '../places-rules.js';
import { moment } from '../words-rules.js';
import { NotRead } from './not-read.js';
import { SureButton } from './sure-button.js';

/**
 * @param {HTMLElement} element
 * @param {{ kind: string, id: string, current: number, onRestored?: () => void }} state
 */
export function HistoryList(element, { kind, id, current, onRestored = () => location.reload() }) {
  const list = el('ol', { class: 'ruled' });
  const more = el('button', { type: 'button', class: 'quiet', hidden: true, on: { click: load } }, 'Older ones');
  const notRead = el('div');
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  let after;
  element.classList.add('history-list');
  fill(element, list, more, notRead, trouble);
  return load();

  async function load() {
    more.disabled = true;
    try {
      const page = await get(`/api/${kind}/${encodeURIComponent(id)}/revisions`, { limit: 6, after });
      after = page.next;
      more.hidden = !after;
      list.append(...page.items.map(line));
      fill(notRead);
    } catch (failure) {
      more.hidden = true;
      NotRead(notRead, failure, load);
    }
    more.disabled = false;
  }

  function line({ revision, savedAt, savedBy, reason }) {
    const isCurrent = revision === current;
    return el('li', {},
      el('p', { class: 'when' }, el('strong', {}, revision), ' ', moment(savedAt), savedBy ? `, ${savedBy}` : ''),
      reason ? el('p', { class: 'reason' }, reason) : null,
      el('p', { class: 'ways' },
        revision > 1 ? el('a', { href: compareAddress(kind, id, revision - 1, revision) }, 'changes') : 'the first',
        isCurrent ? null : el('a', { href: compareAddress(kind, id, revision, current), title: 'what has changed since' }, 'since'),
        isCurrent ? null : el('a', { href: sheetAddress(kind, id, revision) }, 'read'),
        isCurrent ? null : backButton(revision)));
  }

  function backButton(revision) {
    const button = SureButton({ word: 'go back', question: `save ${revision} again as ${current + 1}?`, trouble, act: async () => {
      await actOnSheet(`/api/${kind}/${encodeURIComponent(id)}/revisions/${revision}/restore`, current);
      onRestored();
    } });
    button.classList.add('writes');
    return button;
  }
}
