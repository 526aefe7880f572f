/**
 * old-revision.js: says that an earlier state is open, and offers the ways from there. Appends itself.
 *
 *   OldRevision(leaf, { envelope, newest: 7 })
 */
import { actOnSheet } from '../api.js';
import { el } from '../dom.js';
import { compareAddress, sheetAddress } from '../places-rules.js';
import { moment } from '../words-rules.js';

/** @param {HTMLElement} leaf @param {{ envelope: import('../api.js').Envelope, newest: number }} state */
export function OldRevision(leaf, { envelope, newest }) {
  const { kind, id, revision, savedAt, savedBy, reason } = envelope;
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  const back = el('button', { type: 'button', class: 'writes', on: { click: restore } }, 'Go back to this');
  leaf.append(el('section', { class: 'old-revision' },
    el('p', {}, `This is revision ${revision} of ${newest}, from ${moment(savedAt)}${savedBy ? `, ${savedBy}` : ''}${reason ? `: “${reason}”` : ''}. It can be read, not written.`),
    el('div', { class: 'buttons' },
      el('a', { class: 'button inked', href: sheetAddress(kind, id) }, 'To the newest'),
      el('a', { class: 'button', href: compareAddress(kind, id, revision, newest) }, 'Against the newest'),
      back),
    trouble));

  async function restore() {
    back.disabled = true;
    try {
      await actOnSheet(`/api/${kind}/${encodeURIComponent(id)}/revisions/${revision}/restore`, newest);
      location.assign(sheetAddress(kind, id));
    } catch (failure) {
      back.disabled = false;
      trouble.textContent = failure.message;
    }
  }
}
