/** notebook-list.js: the notebooks one may open, which one is open, another one, a new one, another name. */
import { post, put } from '../api.js';
import { el } from '../dom.js';
import { me, meet } from '../me.js';
import { entryWords } from '../people-rules.js';
import { showNextNotebook } from '../tab-notebook.js';
import { OneLineForm } from './one-line-form.js';
import { Redrawn } from './redrawn.js';
import { say } from './status-line.js';

/** Most characters of a title; openapi.json says the same. */
const LONGEST_TITLE = 200;

/** @param {{ onRenamed: () => void }} around */
export function NotebookList({ onRenamed }) {
  const part = Redrawn('Notebooks', async () => {
    const { notebook, notebooks } = me();
    return [
      notebooks.length ? el('ul', { class: 'ruled people-list' }, notebooks.map((entry) => line(entry, entry.id === notebook?.id)))
        : el('p', {}, 'No notebook is open to you yet. Start one of your own, or ask to be let into one.'),
      notebook?.may === 'own' ? OneLineForm({
        id: 'notebook-title', label: 'Another name for the one that is open', word: 'Rename', value: notebook.title, maxlength: LONGEST_TITLE,
        act: (title) => rename(notebook, title),
      }) : null,
      OneLineForm({
        id: 'new-notebook', label: 'A new notebook', word: 'Start it', maxlength: LONGEST_TITLE, act: start,
        help: 'It begins with blank pages. A notebook that was taken along can be brought into it.',
      }),
    ];
  });
  return part;

  function line(entry, isOpen) {
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    return el('li', { 'aria-current': isOpen ? 'true' : null },
      el('span', { class: 'name' }, entry.title),
      el('span', { class: 'pencil' }, entryWords(entry, me())),
      isOpen ? el('span', { class: 'is-open' }, 'open')
        : el('button', { type: 'button', on: { click: () => open(entry.id).catch((failure) => { trouble.textContent = failure.message; }) } }, 'Open', el('span', { class: 'unseen' }, ` ${entry.title}`)),
      trouble);
  }

  async function rename(notebook, title) {
    await put(`/api/notebooks/${notebook.id}`, { title });
    await meet();
    await part.redraw();
    onRenamed();
    say(`It is called “${title}” now.`);
  }

  async function start(title) {
    const { id } = await post('/api/notebooks', { title });
    await open(id);
  }
}

/** Opens it for every page of this tab, and wherever else nothing is chosen. */
async function open(id) {
  await post(`/api/notebooks/${id}/open`);
  showNextNotebook(id);
  location.assign('/');
}
