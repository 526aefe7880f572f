/** my-account.js: for whoever has signed in: another passphrase, where one is signed in, signing out. */
import { get, put, remove } from '../api.js';
import { el } from '../dom.js';
import { me } from '../me.js';
import { noteSignOut } from '../sign-outs.js';
import { showNextNotebook } from '../tab-notebook.js';
import { asSentence, moment } from '../words-rules.js';
import { Redrawn } from './redrawn.js';
import { say } from './status-line.js';
import { SureButton } from './sure-button.js';

/** Fewest and most characters of a passphrase; openapi.json says the same. */
const SHORTEST = 15;
const LONGEST = 200;

export function MyAccount() {
  const part = Redrawn(`You, ${me().name}`, async () => {
    const { items } = await get('/api/me/sessions');
    const others = items.filter(({ current }) => !current);
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    return [
      el('h3', {}, 'Where you are signed in'),
      el('ul', { class: 'ruled people-list' }, items.map(line)),
      trouble,
      el('div', { class: 'buttons' },
        // A form of its own: the cookie is the server's to take back.
        el('form', { method: 'post', action: '/sign-out', on: { submit: leave } }, el('button', { type: 'submit' }, 'Sign out')),
        others.length ? SureButton({ word: 'End all others', question: 'Really end all others?', act: endOthers, trouble }) : null),
      passphraseForm(),
    ];
  });
  return part;

  function line({ id, beganAt, current }) {
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    return el('li', {},
      el('span', { class: 'name' }, `since ${moment(beganAt)}`),
      current ? el('span', { class: 'is-open' }, 'this one') : SureButton({ word: 'End', about: `the one since ${moment(beganAt)}`, question: 'Really end it?', act: () => end(id), trouble }),
      trouble);
  }

  function leave() {
    noteSignOut();
    showNextNotebook('');
  }

  async function end(id) {
    await remove(`/api/me/sessions/${id}`);
    await part.redraw();
    say('That sign-in has ended.');
  }

  async function endOthers() {
    await remove('/api/me/sessions');
    await part.redraw();
    say('You are signed in here and nowhere else.');
  }

  function passphraseForm() {
    const field = (id, autocomplete, label, help, limits = {}) => {
      const input = el('input', { type: 'password', id, autocomplete, required: true, ...limits });
      return { input, whole: el('div', { class: 'field' }, el('label', { class: 'label', for: id }, label), input, help ? el('span', { class: 'help' }, help) : null) };
    };
    const current = field('passphrase-now', 'current-password', 'Passphrase now');
    const next = field('passphrase-next', 'new-password', 'New passphrase', `${SHORTEST} characters or more; a few words of your own are easiest to keep in mind.`, { minlength: SHORTEST, maxlength: LONGEST });
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const button = el('button', { type: 'submit' }, 'Change it');
    return el('details', { class: 'fold' }, el('summary', {}, el('h3', {}, 'Another passphrase')), el('form', { class: 'passphrase body', on: { submit: send } },
      // So that a browser knows whose passphrase it keeps.
      el('input', { hidden: true, autocomplete: 'username', value: me().name, readonly: true, 'aria-label': 'Name' }),
      current.whole, next.whole, trouble,
      el('div', { class: 'buttons' }, button)));

    async function send(event) {
      event.preventDefault();
      button.disabled = true;
      trouble.textContent = '';
      try {
        await put('/api/me/passphrase', { current: current.input.value, next: next.input.value });
        await part.redraw();
        say('Your passphrase is changed; every other sign-in has ended.');
      } catch (failure) {
        trouble.textContent = asSentence(failure.message);
        button.disabled = false;
      }
    }
  }
}
