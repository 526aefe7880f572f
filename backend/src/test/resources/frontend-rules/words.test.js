import { asSentence, counted, dayFrom, listed, localDay, longDay, newKey, noteName, number, parseNumber, shortDay, signed } from '/words-rules.js';
import { equal } from './expect.js';

export const tests = {
  days_are_written_with_their_weekday() {
    // 26 November 2026 is a Thursday (calendar).
    equal(longDay('2026-11-26'), 'Thursday 26 November 2026');
    equal(shortDay('2026-03-01'), '1 Mar 2026');
    equal(longDay(undefined), '');
  },
  a_day_is_named_from_where_one_stands() {
    equal(dayFrom('2026-11-26', '2026-11-26'), 'tonight');
    equal(dayFrom('2026-11-27', '2026-11-26'), 'tomorrow');
    equal(dayFrom('2026-11-25', '2026-11-26'), 'yesterday');
    equal(dayFrom('2026-12-01', '2026-11-26'), 'in 5 days');
    equal(dayFrom('2026-11-19', '2026-11-26'), '7 days ago');
  },
  a_change_of_clocks_moves_no_day() {
    // In much of Europe clocks went back on 25 October 2026.
    equal(dayFrom('2026-10-26', '2026-10-24'), 'in 2 days');
    equal(localDay(new Date(2026, 9, 25, 0, 30)), '2026-10-25');
    equal(localDay(new Date(2026, 9, 25, 23, 30)), '2026-10-25');
  },
  numbers_have_a_real_minus_and_no_trailing_zeros() {
    equal(number(20), '20');
    equal(number(-1.5), '−1.5');
    equal(number(0.1 + 0.2), '0.3');
    equal(number(-0), '0');
    equal([number(1_234_567), number(-20_000_001), number(0.000_000_1)], ['1234567', '−20000001', '0.0000001']);
    equal(signed(2), '+2');
    equal(signed(-2), '−2');
    equal(signed(0), '0');
  },
  what_a_player_types_is_read_as_a_number() {
    equal(parseNumber(' 20 '), 20);
    equal(parseNumber('1,5'), 1.5);
    equal(parseNumber('−3'), -3);
    equal(parseNumber('+2'), 2);
    equal(parseNumber('.5'), 0.5);
  },
  what_is_no_number_is_none() {
    for (const typed of ['', ' ', '-', '1e5', 'Infinity', 'NaN', '0x10', '1.2.3', '20%', 'twenty']) equal(parseNumber(typed), null);
  },
  what_is_written_is_read_again() {
    for (const amount of [0, 1, -1, 0.25, -37.5, 480, 99_999]) equal(parseNumber(number(amount)), amount);
  },
  accidentals_are_written_as_signs() {
    equal(noteName('Bb3'), 'B♭3');
    equal(noteName('F#4'), 'F♯4');
    equal(noteName('B4'), 'B4');
  },
  words_are_counted_and_listed() {
    equal(counted(1, 'piece'), '1 piece');
    equal(counted(0, 'piece'), '0 pieces');
    equal(listed([]), '');
    equal(listed(['E']), 'E');
    equal(listed(['E', 'A', 'D']), 'E, A and D');
  },
  a_sentence_ends() {
    equal(asSentence('title is empty; give it a name'), 'Title is empty; give it a name.');
    equal(asSentence('Really?'), 'Really?');
  },
  a_new_key_is_one_the_notebook_takes() {
    equal(/^[A-Za-z0-9][A-Za-z0-9_.-]{0,59}$/.test(newKey()), true);
    equal(newKey(() => '0f1e2d3c-4b5a-4697-8897-a6b5c4d3e2f1'), '0f1e2d3c4b5a');
  },
};
