import { readDraft, same } from '/drafts-rules.js';
import { equal } from './expect.js';

const DRAFT = { format: 1, kind: 'rigs', id: 'a', baseRevision: 7, base: { title: 'Stage' }, content: { title: 'Stage two' }, extra: {}, reason: '', touchedAt: '2026-11-25T20:31:05.000Z', wanted: false };

export const tests = {
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
