/**
 * share-dialog.js: makes a read-only link to a rig, a recipe or a set: exact revision or kept up to date, a name, an end.
 * The link is shown once, with its QR code; the notebook keeps only what is needed to recognise it.
 *
 *   ShareDialog(keeping).open();   // the sheet that is open on the page
 */
import { post } from '../api.js';
import { el, fill } from '../dom.js';
import { fileAddress } from '../tab-notebook.js';
import { localDay } from '../words-rules.js';
import { CopyLink } from './copy-link.js';
import { expiryInstant } from './share-rules.js';

/** @param {import('../save.js').Keeping} keeping */
export function ShareDialog({ kind, id, envelope, baseRevision, content: { title }, isDirty }) {
  // A draft may rest on an earlier revision than the newest, which is what others see.
  const revision = envelope?.revision ?? baseRevision;
  const name = el('input', { maxlength: 100, placeholder: 'For Jonas', id: 'share-name', required: true });
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  const until = el('select', { id: 'share-until' },
    el('option', { value: '7' }, 'for a week'),
    el('option', { value: '31' }, 'for a month'),
    el('option', { value: '' }, 'until I revoke it'));
  const make = el('button', { type: 'submit', class: 'inked' }, 'Make the link');
  const form = el('form', { on: { submit: create } },
    el('h2', { id: 'share-title' }, `Share “${title}”`),
    el('p', {}, 'Whoever has the link can read this and nothing else, and can change nothing.'),
    el('label', { class: 'field', for: 'share-name' }, el('span', { class: 'label' }, 'Who is it for?'), name),
    el('fieldset', { class: 'share-which' },
      el('legend', { class: 'label' }, 'What will they see?'),
      which('exact', `As it is now (revision ${revision})`, true),
      which('newest', 'Always the newest', false)),
    el('label', { class: 'field', for: 'share-until' }, el('span', { class: 'label' }, 'How long?'), until),
    isDirty ? el('p', { class: 'pencil' }, 'What is written here and not saved yet is not in it: save first to have it there.') : null,
    trouble,
    el('div', { class: 'buttons' }, make, close('Not now')));
  const dialog = el('dialog', { class: 'share-dialog', 'aria-labelledby': 'share-title' }, form);
  dialog.addEventListener('close', () => dialog.remove());
  return {
    open() {
      document.body.append(dialog);
      dialog.showModal();
      name.focus();
    },
  };

  function which(value, words, checked) {
    return el('label', { class: 'tick' }, el('input', { type: 'radio', name: 'which', value, checked }), words);
  }

  function close(word) {
    return el('button', { type: 'button', class: 'quiet', on: { click: () => dialog.close() } }, word);
  }

  async function create(event) {
    event.preventDefault();
    make.disabled = true;
    try {
      const share = await post('/api/shares', {
        kind,
        id,
        name: name.value.trim(),
        revision: new FormData(form).get('which') === 'exact' ? revision : undefined,
        expiresAt: expiryInstant(until.value, new Date()),
      });
      showOnce(share);
    } catch (failure) {
      trouble.textContent = failure.message;
      make.disabled = false;
    }
  }

  function showOnce(share) {
    const link = CopyLink(share.url);
    const code = el('img', { class: 'code', alt: 'The same link as a code to point a camera at', width: 180, height: 180, src: fileAddress(`/api/shares/qr?url=${encodeURIComponent(share.url)}`) });
    fill(dialog,
      el('h2', { id: 'share-title' }, `${share.name}: the link`),
      el('p', {}, 'It is shown this once. Copy it, or let them point a camera at it.'),
      link.field,
      el('div', { class: 'buttons' },
        link.button, close('Done'), link.said),
      code,
      el('p', { class: 'small' }, el('a', { href: oneFile(), download: `${title}-${localDay(new Date())}.html` }, 'Or take it as one file'),
        ' to send by mail: it opens without a network. ', el('a', { href: '/shares' }, 'All shares')));
    link.field.focus();
  }

  function oneFile() {
    return fileAddress(`/api/${kind}/${encodeURIComponent(id)}/file?revision=${revision}`);
  }
}
