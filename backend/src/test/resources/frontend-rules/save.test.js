import { carriedOver, pauseMillis, pointerSteps, read, withChoices, write } from '/save-rules.js';
import { equal, fails } from './expect.js';

// RFC 6901, section 5.
const RFC_6901 = { foo: ['bar', 'baz'], '': 0, 'a/b': 1, 'c%d': 2, 'e^f': 3, 'g|h': 4, 'i\\j': 5, 'k"l': 6, ' ': 7, 'm~n': 8 };

export const tests = {
  pointers_read_as_the_standard_says() {
    equal(read(RFC_6901, ''), RFC_6901);
    equal(read(RFC_6901, '/foo'), ['bar', 'baz']);
    equal(read(RFC_6901, '/foo/0'), 'bar');
    equal(read(RFC_6901, '/'), 0);
    equal(read(RFC_6901, '/a~1b'), 1);
    equal(read(RFC_6901, '/c%d'), 2);
    equal(read(RFC_6901, '/e^f'), 3);
    equal(read(RFC_6901, '/g|h'), 4);
    equal(read(RFC_6901, '/i\\j'), 5);
    equal(read(RFC_6901, '/k"l'), 6);
    equal(read(RFC_6901, '/ '), 7);
    equal(read(RFC_6901, '/m~0n'), 8);
  },
  a_tilde_is_put_back_last() {
    // RFC 6901, section 4: "~01" is "~1", not "/".
    equal(pointerSteps('/~01'), ['~1']);
  },
  a_place_that_is_not_there_is_undefined() {
    equal(read(RFC_6901, '/foo/2'), undefined);
    equal(read(RFC_6901, '/nothing/deeper'), undefined);
    equal(read({}, '/constructor'), undefined);
  },
  writing_makes_the_way_there() {
    const content = {};
    write(content, '/assignments/1/sensitivity', 22);
    equal(content, { assignments: { 1: { sensitivity: 22 } } });
  },
  writing_nothing_takes_the_place_out() {
    const content = { assignments: { 1: { input: 1 }, 2: { input: 2 } }, styles: ['air', 'jig', 'reel'] };
    write(content, '/assignments/2', undefined);
    write(content, '/styles/1', undefined);
    equal(content, { assignments: { 1: { input: 1 } }, styles: ['air', 'reel'] });
  },
  a_key_that_names_a_prototype_is_only_a_key() {
    const content = {};
    write(content, '/__proto__/polluted', true);
    equal({}.polluted, undefined);
    equal(Object.hasOwn(content, '__proto__'), true);
    const other = {};
    write(other, '/__proto__', { polluted: true });
    equal(other.polluted, undefined);
  },
  the_whole_document_is_not_written_by_pointer() {
    fails(() => write({}, '', 1), 'whole document');
  },
  each_conflict_goes_the_way_it_was_chosen() {
    const merged = { assignments: { 1: { sensitivity: 23 }, 2: { sensitivity: 18 } }, notes: 'theirs' };
    const conflicts = [
      { pointer: '/assignments/1/sensitivity', where: [], theirs: 23, yours: 25 },
      { pointer: '/notes', where: [], theirs: 'theirs', yours: 'mine' },
    ];
    equal(withChoices(merged, conflicts, ['yours', 'theirs']), { assignments: { 1: { sensitivity: 25 }, 2: { sensitivity: 18 } }, notes: 'theirs' });
    equal(withChoices(merged, conflicts, ['theirs', 'yours']), { assignments: { 1: { sensitivity: 23 }, 2: { sensitivity: 18 } }, notes: 'mine' });
    equal(merged.assignments[1].sensitivity, 23);
  },
  what_i_left_out_stays_left_out_if_i_choose_mine() {
    const merged = { assignments: { 1: { input: 1, sensitivity: 23 } } };
    equal(withChoices(merged, [{ pointer: '/assignments/1/sensitivity', where: [], theirs: 23 }], ['yours']), { assignments: { 1: { input: 1 } } });
  },
  what_was_typed_meanwhile_stands_on_top_of_what_the_notebook_answered() {
    const sent = { assignments: { 1: { input: 1, sensitivity: 17 }, 2: { input: 2 } }, effects: { reverb: null }, styles: ['air'], gone: 'x' };
    const typed = { assignments: { 1: { input: 1, sensitivity: 18 }, 2: { input: 2 }, 3: { input: 3 } }, effects: { reverb: null, delay: null }, styles: ['air', 'jig'] };
    const kept = { ...structuredClone(sent), assignments: { 1: { input: 1, sensitivity: 17, trimDecibels: 2 } }, notes: 'theirs' };
    equal(carriedOver(sent, typed, kept), { assignments: { 1: { input: 1, sensitivity: 18, trimDecibels: 2 }, 3: { input: 3 } }, effects: { reverb: null, delay: null }, styles: ['air', 'jig'], notes: 'theirs' });
    equal(carriedOver(sent, sent, kept), kept);
  },
  nothing_is_carried_over_somebody_elses_value() {
    for (const [sent, typed, kept] of [[{ a: 1 }, { a: 2 }, { a: 3 }], [{ a: 1 }, {}, { a: 3 }], [{ a: 1 }, { a: 2 }, {}], [{ a: {} }, { a: null }, { a: { b: 1 } }], [{ a: [1] }, { a: [1, 2] }, { a: [0, 1] }]]) {
      equal(carriedOver(sent, typed, kept), null);
    }
    equal(carriedOver({ a: 1 }, { a: 2 }, { a: 2 }), { a: 2 });
  },
  an_away_server_is_asked_less_and_less_often_but_never_given_up() {
    equal(pauseMillis(0), 3_000);
    equal(pauseMillis(1), 6_000);
    equal(pauseMillis(5), 60_000);
    equal(pauseMillis(10_000), 60_000);
  },
};
