import { inWords, pointsOf, restAndReach, tellingRevisions } from '/parts/string-history-rules.js';
import { equal } from './expect.js';

const entries = (...values) => values.map((sensitivity, index) => ({ revision: index + 1, savedAt: '2026-11-01T20:00:00Z', date: `2026-11-0${index + 1}`, sensitivity }));

export const tests = {
  only_revisions_with_a_change_and_both_ends_are_drawn() {
    equal(tellingRevisions({ 1: entries(22, 22, 22, 20, 20, 20), 2: entries(18, 18, 18, 18, 18, 18) }), [1, 4, 6]);
    equal(tellingRevisions({ 1: entries(22) }), [1]);
    equal(tellingRevisions({}), []);
  },
  a_point_is_a_change_when_the_value_differs_from_the_point_before() {
    equal(pointsOf(entries(22, 20, 20), [1, 2, 3]).map((point) => [point.value, point.changed]), [[22, false], [20, true], [20, false]]);
  },
  a_string_without_a_value_has_a_gap() {
    equal(pointsOf(entries(undefined, 20), [1, 2]).map((point) => [point.value, point.changed]), [[null, false], [20, true]]);
  },
  a_string_that_came_later_is_unset_before() {
    equal(pointsOf(entries(20, 21).slice(1), [1, 2]).map((point) => point.value), [null, 21]);
  },
  the_hairline_is_where_players_start() {
    const lanes = [pointsOf(entries(22, 17), [1, 2]), pointsOf(entries(22, 25), [1, 2])];
    equal(restAndReach(lanes, 22), { rest: 22, reach: 5 });
  },
  without_a_custom_the_first_value_is_the_hairline() {
    equal(restAndReach([pointsOf(entries(20, 20), [1, 2])], undefined), { rest: 20, reach: 1 });
    equal(restAndReach([], undefined), { rest: 0, reach: 1 });
  },
  the_picture_is_told_in_words() {
    equal(inWords('1', pointsOf(entries(22, 20, 22), [1, 2, 3])), 'String 1 went 22, 20, 22.');
    equal(inWords('2', pointsOf(entries(18, 18), [1, 2])), 'String 2 stayed at 18.');
    equal(inWords('3', pointsOf(entries(undefined), [1])), 'String 3 was never set.');
  },
};
