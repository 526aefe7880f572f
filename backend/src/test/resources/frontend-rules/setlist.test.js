import { copiedItems, firstSet } from '/pages/new-setlist-rules.js';
import { moveWords, ordinal, otherRecipe, spotOf, told } from '/pages/setlist-comparison-rules.js';
import { addPiece, changesRig, lastTime, playingOrder, referenceTo, rigOf } from '/pages/setlist-rules.js';
import { stageLines, stepsOf, turned } from '/pages/stage-rules.js';
import { equal } from './expect.js';

const set = (id, date, state) => ({ id, content: { date, state } });
const kept = (title, more = {}) => ({ change: 'kept', moved: false, title, changes: [], wasRecipe: 'a', nowRecipe: 'a', ...more });

export const tests = {
  items_are_played_by_their_order_numbers() {
    equal(playingOrder({ items: { c: { order: 3 }, a: { order: 1 }, b: { order: 1.5 } } }), ['a', 'b', 'c']);
    equal(playingOrder({}), []);
  },
  last_time_is_the_last_set_that_was_played_before() {
    const sets = [set('next', '2026-11-25', 'planned'), set('off', '2026-11-20', 'planned'), set('b', '2026-11-18', 'played'), set('a', '2026-11-04', 'played')];
    equal(lastTime(sets, sets[0]).id, 'b');
    equal(lastTime(sets, sets[2]).id, 'a');
    equal(lastTime(sets, sets[3]), undefined);
  },
  without_a_played_one_a_planned_set_will_do() {
    const sets = [set('a', '2026-11-25', 'planned'), set('b', '2026-11-20', 'planned')];
    equal(lastTime(sets, sets[0]).id, 'b');
  },
  a_piece_comes_last_with_the_recipe_it_was_played_with_last() {
    const content = { items: { a: { order: 4, piece: 'p' } } };
    addPiece(content, 'q', [{ id: 'never' }, { id: 'old', extras: { lastPlayed: '2026-09-01' } }, { id: 'new', extras: { lastPlayed: '2026-11-01' } }], () => 'b');
    equal(content.items.b, { order: 5, piece: 'q', recipe: { id: 'new' }, note: '' });
    addPiece(content, 'r', [], () => 'c');
    equal(content.items.c, { order: 6, piece: 'r', note: '' });
  },
  a_played_set_holds_exact_revisions_and_a_planned_one_follows() {
    const sheet = { id: 'r', revision: 7 };
    equal(referenceTo({ state: 'played' }, sheet), { id: 'r', revision: 7 });
    equal(referenceTo({ state: 'planned' }, sheet), { id: 'r' });
    equal(referenceTo({ state: 'played' }, undefined), undefined);
  },
  a_rig_is_changed_where_it_differs_from_the_piece_before() {
    const content = { rig: { id: 'four' } };
    const [own, none] = [{ rig: { id: 'five' } }, {}];
    equal(rigOf(content, none).id, 'four');
    equal(changesRig(content, none), false);
    equal(changesRig(content, own, none), true);
    equal(changesRig(content, own, own), false);
    equal(changesRig(content, none, own), true);
    equal(changesRig({}, {}, undefined), false);
  },
  a_copied_set_is_free_again_to_follow_its_recipes() {
    const model = set('a', '2026-11-18', 'played');
    Object.assign(model.content, { place: 'Hall', rig: { id: 'four', revision: 8 }, items: {
      x: { order: 1, piece: 'p', recipe: { id: 'r', revision: 3 }, rig: { id: 'four', revision: 8 }, note: 'slow' },
      y: { order: 2, piece: 'q', rig: { id: 'five', revision: 5 } } } });
    equal(copiedItems(model), { x: { order: 1, piece: 'p', recipe: { id: 'r' }, note: 'slow' }, y: { order: 2, piece: 'q', rig: { id: 'five' }, note: '' } });
    const first = firstSet('2026-12-01', model, undefined);
    equal([first.state, first.rig, first.place], ['planned', { id: 'four' }, 'Hall']);
    equal(firstSet('2026-12-01'), { title: '', date: '2026-12-01', place: '', state: 'planned', items: {}, notes: '' });
  },
  a_comparison_is_told_by_what_became_of_each_piece() {
    const found = told({ pieces: [
      kept('same'), kept('moved', { moved: true, nowPosition: 2 }), kept('both', { moved: true, nowPosition: 1, changes: [{}] }), kept('recipe', { nowRecipe: 'b', nowPosition: 3 }),
      { change: 'added', title: 'late', nowPosition: 9 }, { change: 'added', title: 'early', nowPosition: 4 }, { change: 'dropped', title: 'gone', wasPosition: 2 }] });
    const titles = (group) => group.map(({ title }) => title);
    equal(titles(found.added), ['early', 'late']);
    equal(titles(found.dropped), ['gone']);
    equal(titles(found.moved), ['both', 'moved']);
    equal(titles(found.changed), ['both', 'recipe']);
    equal(titles(found.same), ['same']);
  },
  a_move_is_told_by_its_place_or_by_the_piece_before() {
    const [reel, air, jig] = [{ title: 'Reel', wasPosition: 1, nowPosition: 1 }, { title: 'Air', nowPosition: 2 }, { title: 'Jig', wasPosition: 3, nowPosition: 3 }];
    const comparison = { pieces: [reel, air, jig, { title: 'Gone', wasPosition: 2 }] };
    equal(moveWords(comparison, { wasPosition: 5, nowPosition: 2 }), ['5th', '2nd']);
    equal(moveWords(comparison, jig), ['after Gone', 'after Air']);
    equal(moveWords(comparison, reel), ['first', 'first']);
    equal([1, 2, 3, 4, 11, 12, 13, 21, 22, 23, 101].map(ordinal), ['1st', '2nd', '3rd', '4th', '11th', '12th', '13th', '21st', '22nd', '23rd', '101st']);
  },
  an_absent_recipe_is_another_one() {
    equal(otherRecipe({ wasRecipe: 'a' }), true);
    equal(otherRecipe({}), false);
  },
  a_spot_of_the_address_is_a_set_and_perhaps_a_revision() {
    equal(spotOf('a@3'), { id: 'a', revision: 3 });
    equal(spotOf('a'), { id: 'a' });
    for (const none of [null, '', '@3', 'a@b', 'a@3@4']) equal(spotOf(none), null);
  },
  on_stage_each_piece_tells_what_is_needed() {
    const content = { rig: { id: 'four' }, items: { a: { order: 1, piece: 'p', note: 'Lights down' }, b: { order: 2, piece: 'gone', rig: { id: 'five' } } } };
    const [first, second] = stageLines(content, {
      pieces: new Map([['p', { title: 'Reel', content: { key: 'D', meter: '4/4', tempoBpm: 216, notes: '' } }]]),
      rigs: new Map([['five', { title: 'Five-string' }]]),
      sounds: new Map([['a', { title: 'Bright', settings: { slot: 'A3', straight: { on: false }, voices: {}, effects: {}, notes: '' } }]]),
    });
    equal([first.position, first.title, first.key, first.tempo, first.slot, first.recipe, first.note, first.newRig], [1, 'Reel', 'D', '216 bpm', 'A3', 'Bright', 'Lights down', '']);
    equal([second.title, second.hasSound, second.newRig], ['A piece that is no longer here', false, 'Five-string']);
  },
  turning_ends_where_the_set_ends() {
    equal([turned(0, -1, 3), turned(0, 1, 3), turned(2, 1, 3), turned(7, 0, 3)], [0, 1, 2, 2]);
  },
  a_foot_switch_sends_arrows_or_page_keys() {
    equal(['ArrowRight', 'PageDown', ' ', 'ArrowLeft', 'PageUp', 'a', 'Tab'].map(stepsOf), [1, 1, 1, -1, -1, 0, 0]);
  },
};
