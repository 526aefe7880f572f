/**
 * backups.js: when the notebook was last backed up, and a button to do it now. Stays out of sight where that is not the
 * reader's business.
 *
 *   el('dialog', {}, Backups());
 */
import { get, postLong } from '../api.js';
import { el } from '../dom.js';
import { moment } from '../words-rules.js';

/** @returns {HTMLElement} */
export function Backups() {
  const words = el('p', { role: 'status' });
  const button = el('button', { type: 'button', on: { click: make } }, 'Back up now');
  const part = el('section', { class: 'backups', 'aria-labelledby': 'backups-title', hidden: true },
    el('h3', { id: 'backups-title' }, 'Backups'), words, el('div', { class: 'buttons' }, button));
  look();
  return part;

  async function look() {
    try {
      const { daily, items } = await get('/api/backups');
      tell(daily, items[0]);
      part.hidden = false;
    } catch {
      part.hidden = true;
    }
  }

  function tell(daily, newest) {
    button.hidden = !daily;
    if (!daily) words.textContent = 'This service keeps no backups by itself.';
    else if (newest) words.textContent = `Last backed up on ${moment(newest.at)}. It happens once a day by itself.`;
    else words.textContent = 'Not backed up yet. It happens once a day by itself.';
  }

  async function make() {
    button.disabled = true;
    words.textContent = 'Backing up …';
    try {
      tell(true, await postLong('/api/backups'));
    } catch (failure) {
      words.textContent = failure.message;
    }
    button.disabled = false;
  }
}
