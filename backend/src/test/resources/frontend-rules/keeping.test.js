import { findDraft, keepDraft } from '/drafts.js';
import { Keeping } from '/save.js';
import { equal } from './expect.js';

/**
 * A rig at revision 7 on this page, while the notebook answers each request in turn with what `answers` return, or is away for null.
 * An answer may type something: that is what happens while the request is under way.
 */
async function keeping(answers, work, { draft = null, isNew = false } = {}) {
  localStorage.clear();
  const fetched = globalThis.fetch;
  const asked = [];
  globalThis.fetch = async (path, { method, body, headers }) => {
    asked.push({ method, path, match: headers['If-Match'], ...(body ? JSON.parse(body) : {}) });
    const answer = answers.shift()();
    if (!answer) throw new TypeError('nobody answers');
    return new Response(JSON.stringify(answer), { status: answer.status ?? 200 });
  };
  const sheet = isNew ? new Keeping('rigs', 'a', null, draft) : new Keeping('rigs', 'a', envelope(7, { one: 17, two: 23, notes: '' }), draft);
  try {
    await work(sheet, asked);
  } finally {
    sheet.leave();
    globalThis.fetch = fetched;
    localStorage.clear();
  }
}

function envelope(revision, content, extras) {
  return { id: 'a', kind: 'rigs', revision, content, extras };
}

function touched(current, currentContent, conflicts) {
  return { type: '/problems/edited-meanwhile', status: 412, title: 'Edited meanwhile', current, currentContent, merged: currentContent, conflicts };
}

const type = (sheet, field, value) => sheet.change((content) => { content[field] = value; });
const CONFLICT = [{ pointer: '/one', where: ['One'], base: 17, theirs: 18, yours: 15 }];

export const tests = {
  async what_is_typed_after_a_conflict_asks_for_a_merge_of_its_own() {
    let sheet;
    await keeping([
      () => touched(8, { one: 18, two: 23, notes: '' }, CONFLICT),
      () => touched(8, { one: 18, two: 30, notes: 'buzzes' }, CONFLICT),
      () => envelope(9, { one: 15, two: 30, notes: 'buzzes' }),
    ], async (opened, asked) => {
      sheet = opened;
      type(sheet, 'one', 15);
      await sheet.save();
      equal(sheet.state, 'conflict');
      type(sheet, 'two', 30);
      type(sheet, 'notes', 'buzzes');
      equal([sheet.state, sheet.problem], ['draft', null]);
      await sheet.save();
      equal(asked[1].content, { one: 15, two: 30, notes: 'buzzes' });
      await sheet.choose(['yours']);
      equal(asked[2], { method: 'PUT', path: '/api/rigs/a', match: '"r8"', content: { one: 15, two: 30, notes: 'buzzes' }, reason: '', by: '' });
      equal([sheet.state, sheet.content], ['saved', { one: 15, two: 30, notes: 'buzzes' }]);
    });
  },
  async thrown_away_after_a_conflict_leaves_what_the_notebook_has_now() {
    await keeping([
      () => touched(8, { one: 18, two: 23, notes: '' }, CONFLICT),
      () => envelope(9, { one: 18, two: 23, notes: 'buzzes' }),
    ], async (sheet, asked) => {
      type(sheet, 'one', 15);
      await sheet.save();
      type(sheet, 'two', 30);
      sheet.discard();
      equal([sheet.state, sheet.isDirty, sheet.content], ['clean', false, { one: 18, two: 23, notes: '' }]);
      type(sheet, 'notes', 'buzzes');
      await sheet.save();
      equal([asked[1].match, sheet.state], ['"r8"', 'saved']);
    });
  },
  async what_is_typed_before_a_conflict_is_told_is_part_of_the_choice() {
    let sheet;
    await keeping([
      () => (type(sheet, 'notes', 'buzzes'), touched(8, { one: 18, two: 23, notes: '' }, CONFLICT)),
      () => touched(8, { one: 18, two: 23, notes: 'buzzes' }, CONFLICT),
    ], async (opened, asked) => {
      sheet = opened;
      type(sheet, 'one', 15);
      await sheet.save();
      equal([sheet.state, sheet.problem.body.merged.notes, asked.length], ['conflict', 'buzzes', 2]);
    });
  },
  async what_is_typed_while_a_save_is_merged_keeps_both_edits() {
    let sheet;
    await keeping([
      () => (type(sheet, 'notes', 'buzzes'), envelope(9, { one: 15, two: 30, notes: '' }, { merged: true })),
      () => envelope(10, { one: 15, two: 30, notes: 'buzzes' }),
    ], async (opened, asked) => {
      sheet = opened;
      type(sheet, 'one', 15);
      await sheet.save();
      equal([sheet.state, sheet.content], ['draft', { one: 15, two: 30, notes: 'buzzes' }]);
      equal([findDraft('rigs', 'a').baseRevision, findDraft('rigs', 'a').content.two], [9, 30]);
      await sheet.save();
      equal([asked[1].match, asked[1].content.two, sheet.state], ['"r9"', 30, 'saved']);
    });
  },
  async what_is_typed_where_a_merge_brought_another_value_is_left_to_the_player() {
    let sheet;
    await keeping([
      () => (type(sheet, 'two', 24), envelope(9, { one: 15, two: 30, notes: '' }, { merged: true })),
      () => touched(9, { one: 15, two: 30, notes: '' }, [{ pointer: '/two', where: [], base: 23, theirs: 30, yours: 24 }]),
    ], async (opened, asked) => {
      sheet = opened;
      type(sheet, 'one', 15);
      await sheet.save();
      equal([sheet.state, sheet.content], ['draft', { one: 15, two: 24, notes: '' }]);
      await sheet.save();
      equal([asked[1].match, sheet.state], ['"r7"', 'conflict']);
    });
  },
  async words_beside_the_content_and_the_reason_outlast_a_save_that_was_under_way() {
    let sheet;
    await keeping([
      () => {
        sheet.extra.log.text = 'It speaks';
        sheet.reason = 'for the gut strings';
        sheet.touch();
        return envelope(8, { one: 15, two: 23, notes: '' });
      },
    ], async (opened) => {
      sheet = opened;
      sheet.extra = { log: { text: 'It' } };
      sheet.reason = 'for';
      type(sheet, 'one', 15);
      await sheet.save();
      equal([sheet.state, sheet.reason], ['draft', 'for the gut strings']);
      equal(findDraft('rigs', 'a').extra.log.text, 'It speaks');
    });
  },
  async a_new_sheet_whose_answer_was_lost_is_saved_with_what_was_typed_since() {
    await keeping([
      () => null,
      () => ({ status: 422, type: '/problems/invalid-content', pointer: '/id', detail: 'this id already belongs to another sheet' }),
      () => envelope(1, { one: 15 }),
      () => envelope(2, { one: 16 }),
    ], async (sheet, asked) => {
      type(sheet, 'one', 15);
      await sheet.save();
      equal(sheet.state, 'away');
      type(sheet, 'one', 16);
      await sheet.save();
      equal(asked.map(({ method, path, match }) => [method, path, match]), [
        ['POST', '/api/rigs', undefined], ['POST', '/api/rigs', undefined], ['GET', '/api/rigs/a/revisions/1', undefined], ['PUT', '/api/rigs/a', '"r1"']]);
      equal([sheet.state, sheet.baseRevision, sheet.content], ['saved', 2, { one: 16 }]);
    }, { isNew: true });
  },
  async an_id_that_belongs_to_a_sheet_of_another_kind_is_still_refused() {
    await keeping([
      () => ({ status: 422, type: '/problems/invalid-content', pointer: '/id', detail: 'this id already belongs to another sheet' }),
      () => ({ status: 404, type: '/problems/no-such-sheet' }),
    ], async (sheet) => {
      type(sheet, 'one', 15);
      await sheet.save();
      equal([sheet.state, sheet.problem.pointer, sheet.baseRevision], ['refused', '/id', 0]);
    }, { isNew: true });
  },
  async a_save_drops_its_own_draft_and_leaves_that_of_another_tab() {
    let sheet;
    const beside = { format: 1, kind: 'rigs', id: 'a', baseRevision: 7, base: { one: 17 }, content: { one: 17, notes: 'typed beside' }, extra: {}, reason: '', touchedAt: '2026-11-25T20:31:05.000Z', wanted: false };
    await keeping([
      () => envelope(8, { one: 15, two: 23, notes: '' }),
      () => (keepDraft(beside), envelope(9, { one: 14, two: 23, notes: '' })),
    ], async (opened) => {
      sheet = opened;
      type(sheet, 'one', 15);
      await sheet.save();
      equal([sheet.state, findDraft('rigs', 'a')], ['saved', null]);
      type(sheet, 'one', 14);
      await sheet.save();
      equal([sheet.state, findDraft('rigs', 'a')], ['saved', beside]);
    });
  },
  async words_whose_draft_gave_way_to_another_tabs_are_kept_again() {
    await keeping([], async (sheet) => {
      type(sheet, 'notes', 'buzzes');
      localStorage.clear();
      dispatchEvent(new StorageEvent('storage'));
      equal(findDraft('rigs', 'a').content.notes, 'buzzes');
      sheet.discard();
      dispatchEvent(new StorageEvent('storage'));
      equal(findDraft('rigs', 'a'), null);
    });
  },
  async a_new_sheet_that_is_thrown_away_takes_its_draft_and_nobody_draws_an_empty_one() {
    await keeping([], async (sheet) => {
      type(sheet, 'one', 15);
      let told = 0;
      sheet.onChange(() => { told += 1; });
      sheet.discard();
      equal([findDraft('rigs', 'a'), told, sheet.content], [null, 0, { one: 15 }]);
    }, { isNew: true });
  },
  async a_draft_that_was_found_goes_when_it_is_saved() {
    const found = { format: 1, kind: 'rigs', id: 'a', baseRevision: 7, base: { one: 17 }, content: { one: 15 }, extra: {}, reason: '', touchedAt: '2026-11-25T20:31:05.000Z', wanted: false };
    await keeping([], async (sheet) => {
      keepDraft(found);
      equal(sheet.foundDraftFrom, found.touchedAt);
      sheet.discard();
      equal(findDraft('rigs', 'a'), null);
    }, { draft: found });
  },
};
