import { linesOf, sensitivityChange } from '/pages/tonight-rules.js';
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
    equal(sensitivityChange({ rig: [{ changes: [{ pointer: '/assignments/1/input' }, change] }] }, '1'), change);
    equal(sensitivityChange({ rig: [] }, '1'), undefined);
    equal(sensitivityChange(undefined, '1'), undefined);
  },
};
