/**
 * followers-dialog.js: before a starting point is saved: which recipes would change, and how; each can follow on or stay.
 * One that cannot follow is told why; it stays.
 *
 *   const stayPinned = await FollowersDialog(followers, { title: 'Everyday', revision: 4 });   // null: not saved after all
 */
import { el } from '../dom.js';
import { asSentence, counted } from '../words-rules.js';
import { ChangeList } from './change-list.js';

/**
 * @param {{ id: string, title: string, pieceTitle?: string, follows: number, changes: any[], problem?: string }[]} followers
 * @param {{ title: string, revision: number }} start  the revision the edit began with
 * @returns {Promise<string[] | null>} ids of those that stay at the revision they follow now
 */
export function FollowersDialog(followers, { title, revision }) {
  const stuck = followers.filter(({ problem }) => problem);
  const changing = followers.filter(({ changes, problem }) => !problem && changes.length > 0);
  const others = followers.filter(({ changes, problem }) => !problem && changes.length === 0);
  const form = el('form', { method: 'dialog' },
    el('h2', { id: 'followers-title' }, changing.length ? `${counted(changing.length, 'recipe')} would sound different` : 'No recipe would sound different'),
    el('p', {}, `These follow “${title}”. Those that follow on take the new values; those that stay keep the ones they have now, and can follow on later.`),
    changing.length > 1 ? el('div', { class: 'buttons' },
      el('button', { type: 'button', class: 'quiet', on: { click: () => chooseAll('on') } }, 'All follow on'),
      el('button', { type: 'button', class: 'quiet', on: { click: () => chooseAll('stay') } }, 'All stay')) : null,
    el('ul', { class: 'ruled' }, changing.map((follower) => entry(follower, true))),
    stuck.length ? [el('h3', {}, `${counted(stuck.length, 'recipe')} cannot follow on`), el('ul', { class: 'ruled' }, stuck.map((follower) => entry(follower, false)))] : null,
    others.length ? el('details', {}, el('summary', {}, `${counted(others.length, 'recipe')} would sound the same`),
      el('ul', { class: 'ruled' }, others.map((follower) => entry(follower, false)))) : null,
    el('div', { class: 'buttons' },
      el('button', { class: 'inked', value: 'save' }, 'Save the starting point'),
      el('button', { class: 'quiet', value: '' }, 'Not yet')));
  const dialog = el('dialog', { class: 'followers-dialog', 'aria-labelledby': 'followers-title' }, form);
  document.body.append(dialog);
  dialog.showModal();
  return new Promise((resolve) => {
    dialog.addEventListener('close', () => {
      const chosen = new FormData(form);
      resolve(dialog.returnValue === 'save' ? followers.filter(({ id }) => chosen.get(id) === 'stay').map(({ id }) => id) : null);
      dialog.remove();
    });
  });

  function entry({ id, title: name, pieceTitle, follows, changes, problem }, tellsChanges) {
    // Whoever chose to stay behind before is not moved on by the way.
    const stays = Boolean(problem) || follows < revision;
    const list = el('div');
    if (tellsChanges) ChangeList(list, changes);
    return el('li', { class: 'follower' },
      el('fieldset', {},
        el('legend', {}, el('span', { class: 'name' }, name), pieceTitle ? el('span', { class: 'pencil' }, ` for ${pieceTitle}`) : null),
        list,
        problem ? el('p', { class: 'unsafe' }, asSentence(problem)) : null,
        el('div', { class: 'ways' },
          problem ? null : way(id, 'on', 'follow on', !stays),
          way(id, 'stay', `stay with revision ${follows}`, stays))));
  }

  function way(id, value, words, checked) {
    return el('label', { class: 'tick' }, el('input', { type: 'radio', name: id, value, checked }), words);
  }

  function chooseAll(value) {
    for (const { id } of changing) form.querySelector(`input[name="${CSS.escape(id)}"][value="${value}"]`).checked = true;
  }
}
