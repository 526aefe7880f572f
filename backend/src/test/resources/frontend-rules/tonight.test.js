import { linesOf, sensitivityChange, when } from '/pages/tonight-rules.js';
import { equal } from './expect.js';

const SET = { items: { b: { order: 2, piece: 'p2', recipe: { id: 'r2', revision: 1 }, note: '' }, a: { order: 1, piece: 'p1', note: 'twice' }, c: { order: 1.5, piece: 'p3' } } };

export const tests = {
  pieces_stand_in_the_order_they_are_played() {
    equal(linesOf(SET).map((line) => line.pieceId), ['p1', 'p3', 'p2']);
  },
  without_an_earlier_set_nothing_is_news() {
    equal(linesOf(SET).map((line) => line.news), [[], [], []]);
  },
  each_piece_says_what_is_new_about_it() {
    const comparison = { pieces: [
      { pieceId: 'p1', change: 'added', changes: [] },
      { pieceId: 'p2', change: 'kept', moved: true, changes: [{}] },
      { pieceId: 'p3', change: 'kept', moved: false, changes: [{}, {}] },
    ] };
    equal(linesOf(SET, comparison).map((line) => line.news), [['new'], ['2 changes'], ['moved', '1 change']]);
  },
  a_string_finds_its_own_change() {
    const change = { pointer: '/assignments/1/sensitivity', was: '20', now: '22' };
    equal(sensitivityChange({ rig: [{ nowId: 'r', changes: [{ pointer: '/assignments/1/input' }, change] }] }, 'r', '1'), change);
    equal(sensitivityChange({ rig: [] }, 'r', '1'), undefined);
    equal(sensitivityChange(undefined, 'r', '1'), undefined);
  },
  a_change_of_another_rig_is_not_told_of_this_one() {
    const [of, other] = ['22', '9'].map((now) => ({ pointer: '/assignments/1/sensitivity', now }));
    const comparison = { rig: [{ nowId: 'cello', changes: [other] }, { nowId: 'violin', changes: [of] }] };
    equal(sensitivityChange(comparison, 'violin', '1'), of);
    equal(sensitivityChange(comparison, 'viola', '1'), undefined);
  },
  a_set_whose_day_has_passed_is_no_next_set() {
    equal(when('2026-11-26', '2026-11-26'), 'Tonight');
    equal(when('2026-11-27', '2026-11-26'), 'The next set, tomorrow');
    equal(when('2026-11-25', '2026-11-26'), 'Yesterday, not marked as played');
    equal(when('2026-11-23', '2026-11-26'), '3 days ago, not marked as played');
  },
};
