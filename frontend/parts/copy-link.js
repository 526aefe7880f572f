/**
 * copy-link.js: a link that is shown once, and the button that copies it.
 *
 *   const { field, button, said } = CopyLink(share.url);
 */
import { el } from '../dom.js';

/** @param {string} link @returns {{ field: HTMLInputElement, button: HTMLButtonElement, said: HTMLElement }} */
export function CopyLink(link) {
  const field = el('input', { readonly: true, value: link, 'aria-label': 'The link', on: { focus: (event) => event.target.select() } });
  const said = el('output', { class: 'pencil' });
  const button = el('button', { type: 'button', class: 'inked', on: { click: copy } }, 'Copy the link');
  return { field, button, said };

  async function copy() {
    try {
      await navigator.clipboard.writeText(link);
      said.textContent = 'Copied.';
    } catch {
      field.focus();
      said.textContent = 'This browser does not copy by itself; the link is marked, press Ctrl+C.';
    }
  }
}
