import { adoptDrafts, findDraft, findNewDraft, keepDraft } from '/drafts.js';
import { draftKey, isDraftKey, readDraft, same } from '/drafts-rules.js';
import { showNotebook } from '/tab-notebook.js';
import { equal } from './expect.js';

const DRAFT = { format: 1, kind: 'rigs', id: 'a', baseRevision: 7, base: { title: 'Stage' }, content: { title: 'Stage two' }, extra: {}, reason: '', touchedAt: '2026-11-25T20:31:05.000Z', wanted: false };

/** What lies in the store once `drafts` were kept there and this notebook has been opened, told by what was typed. */
function adopted(notebook, drafts) {
  localStorage.clear();
  for (const [key, draft] of Object.entries(drafts)) localStorage.setItem(key, typeof draft === 'string' ? draft : JSON.stringify(draft));
  adoptDrafts(notebook);
  const found = Object.fromEntries(Object.entries({ ...localStorage }).map(([key, text]) => [key, readDraft(text)?.content.title ?? text]));
  localStorage.clear();
  return found;
}

export const tests = {
  what_only_waits_for_the_notebook_is_not_taken_up_as_the_next_new_one() {
    localStorage.clear();
    const begun = { ...DRAFT, baseRevision: 0, base: null };
    keepDraft({ ...begun, id: 'sent', wanted: true });
    const whileItWaits = findNewDraft('rigs');
    keepDraft({ ...begun, id: 'begun', touchedAt: '2026-11-24T20:31:05.000Z' });
    const found = findNewDraft('rigs');
    localStorage.clear();
    equal([whileItWaits, found.id], [null, 'begun']);
  },
  drafts_of_two_notebooks_lie_apart() {
    equal(draftKey('n1', 'rigs', 'a') === draftKey('n2', 'rigs', 'a'), false);
    equal(isDraftKey('n1', draftKey('n1', 'rigs', 'a')), true);
    equal(isDraftKey('n1', draftKey('n2', 'rigs', 'a')), false);
    equal(isDraftKey('n1', draftKey('n12', 'rigs', 'a')), false);
    equal(isDraftKey('', draftKey('n1', 'rigs', 'a')), false);
    equal(isDraftKey('n1', 'rosinbook.draft.rigs.a'), false);
  },
  a_page_finds_the_drafts_of_its_notebook_only() {
    localStorage.clear();
    localStorage.setItem(draftKey('n1', 'rigs', 'a'), JSON.stringify(DRAFT));
    showNotebook('n1');
    const [here, there] = [findDraft('rigs', 'a'), (showNotebook('n2'), findDraft('rigs', 'a'))];
    showNotebook('');
    localStorage.clear();
    equal(here, DRAFT);
    equal(there, null);
  },
  a_draft_from_before_there_were_several_notebooks_is_found_in_the_first_that_is_opened() {
    // The place where earlier releases kept it.
    const found = adopted('n1', { 'rosinbook.draft.rigs.a': DRAFT, 'rosinbook.player': 'Mira' });
    equal(found, { [draftKey('n1', 'rigs', 'a')]: 'Stage two', 'rosinbook.player': 'Mira' });
  },
  the_later_of_two_drafts_stays() {
    const later = { ...DRAFT, content: { title: 'Later' }, touchedAt: '2026-11-26T08:00:00.000Z' };
    const place = draftKey('n1', 'rigs', 'a');
    equal(adopted('n1', { 'rosinbook.draft.rigs.a': DRAFT, [place]: later }), { [place]: 'Later' });
    equal(adopted('n1', { 'rosinbook.draft.rigs.a': later, [place]: DRAFT }), { [place]: 'Later' });
  },
  what_cannot_be_read_is_left_where_it_is() {
    equal(adopted('n1', { 'rosinbook.draft.rigs.a': '{' }), { 'rosinbook.draft.rigs.a': '{' });
  },
  a_draft_is_read_as_it_was_kept() {
    equal(readDraft(JSON.stringify(DRAFT)), DRAFT);
  },
  a_new_sheet_has_no_base() {
    equal(readDraft(JSON.stringify({ ...DRAFT, baseRevision: 0, base: null }))?.baseRevision, 0);
    equal(readDraft(JSON.stringify({ ...DRAFT, base: null })), null);
  },
  what_is_no_draft_is_not_read() {
    for (const text of [null, '', 'null', '7', '[]', '{', '{}', '"draft"']) equal(readDraft(text), null);
    for (const [field, value] of [['format', 2], ['kind', 7], ['id', null], ['baseRevision', -1], ['baseRevision', '7'], ['content', []], ['content', 'x'], ['extra', null], ['reason', 0], ['touchedAt', 'lately'], ['wanted', 'yes']]) {
      equal(readDraft(JSON.stringify({ ...DRAFT, [field]: value })), null);
    }
  },
  the_order_of_keys_makes_no_difference() {
    equal(same({ a: 1, b: [1, { c: 2 }] }, { b: [1, { c: 2 }], a: 1 }), true);
  },
  a_field_that_is_undefined_is_not_there() {
    equal(same({ a: 1, b: undefined }, { a: 1 }), true);
    equal(same({ a: 1 }, { a: 1, b: undefined }), true);
  },
  a_difference_is_seen_at_any_depth() {
    for (const [one, other] of [[{ a: 1 }, { a: 2 }], [{ a: 1 }, { b: 1 }], [[1, 2], [2, 1]], [{ a: null }, { a: {} }], [{}, []], [0, '0'], [{ a: { b: [1] } }, { a: { b: [1, 2] } }], [{ a: 1, b: undefined }, { a: 1, c: 2 }]]) {
      equal(same(one, other), false);
      equal(same(other, one), false);
    }
  },
};
