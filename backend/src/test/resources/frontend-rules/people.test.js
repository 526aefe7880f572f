import { askWords, entryWords, fileAddressIn, isLastOwner, mayWriteAs, notYetMembers } from '/people-rules.js';
import { get, onAnswer } from '/api.js';
import { showNotebook } from '/tab-notebook.js';
import { equal } from './expect.js';

const MIRA = { id: 'm', name: 'Mira', keeper: false, local: false, notebooks: [] };
const member = (player, may) => ({ player, name: player, may });

/** Headers that a request brings. */
async function headersOf(request) {
  const fetched = globalThis.fetch;
  let headers;
  globalThis.fetch = async (_, asked) => {
    headers = asked.headers;
    return new Response('{}');
  };
  try {
    await request();
  } finally {
    globalThis.fetch = fetched;
  }
  return headers;
}

export const tests = {
  only_who_may_read_and_nothing_else_is_offered_nothing() {
    equal(['read', 'write', 'own'].map((may) => mayWriteAs({ ...MIRA, notebook: { may } })), [false, true, true]);
    equal(mayWriteAs(null), true);
    equal(mayWriteAs(MIRA), true);
  },
  who_is_asked_is_who_owns_it() {
    equal(askWords({ ownedBy: 'Mira' }), 'Ask Mira.');
    equal(askWords({ ownedBy: 'Ada, Mira' }), 'Ask Ada or Mira.');
    equal(askWords({ ownedBy: '' }), 'Ask whoever owns it.');
    equal(askWords(undefined), 'Ask whoever owns it.');
  },
  a_notebook_says_whose_it_is_and_what_one_may() {
    equal(entryWords({ may: 'own', ownedBy: 'Mira' }, MIRA), 'yours');
    equal(entryWords({ may: 'own', ownedBy: 'Ada, Mira' }, MIRA), 'yours, and Ada’s');
    equal(entryWords({ may: 'write', ownedBy: 'Ada, Jonas' }, MIRA), 'Ada, Jonas’s; you may write');
    equal(entryWords({ may: 'read', ownedBy: 'Ada' }, MIRA), 'Ada’s; reading only');
    equal(entryWords({ may: 'read', ownedBy: '' }, MIRA), 'somebody else’s; reading only');
    equal(entryWords({ may: 'own', ownedBy: '' }, { ...MIRA, local: true }), '');
  },
  whoever_has_a_right_is_not_let_in_again() {
    const players = ['a', 'b', 'c'].map((id) => ({ id, name: id, keeper: false, joined: true }));
    equal(notYetMembers(players, [member('b', 'read')]).map(({ id }) => id), ['a', 'c']);
    equal(notYetMembers(players, []).length, 3);
  },
  the_last_owner_stays() {
    const ada = member('a', 'own');
    equal(isLastOwner(ada, [ada, member('b', 'write')]), true);
    equal(isLastOwner(ada, [ada, member('b', 'own')]), false);
    equal(isLastOwner(member('b', 'write'), [ada, member('b', 'write')]), false);
  },
  a_link_to_a_file_says_of_which_notebook() {
    equal(fileAddressIn('n1', '/api/export'), '/api/export?notebook=n1');
    equal(fileAddressIn('n1', '/api/takes/7/clean.mid?glide=bend'), '/api/takes/7/clean.mid?glide=bend&notebook=n1');
    equal(fileAddressIn('', '/api/export'), '/api/export');
  },
  async every_request_says_which_notebook_the_tab_shows() {
    showNotebook('n1');
    const named = await headersOf(() => get('/api/rigs'));
    showNotebook('');
    const unnamed = await headersOf(() => get('/api/rigs'));
    equal(named['Rosinbook-Notebook'], 'n1');
    equal(Object.hasOwn(unnamed, 'Rosinbook-Notebook'), false);
  },
  async how_a_request_went_is_told() {
    const told = [];
    onAnswer((problem) => told.push(problem?.type ?? 'well'));
    await get('/api/pieces');
    await get('/api/no/such/address').catch(() => null);
    equal(told, ['well', 'no-such-page']);
  },
};
