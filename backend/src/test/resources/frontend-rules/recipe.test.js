import { diffPatch, editedPatch, givenBack, hasOwnWithin, isOwn, leftOut, mergePatch } from '/recipe-rules.js';
import { equal } from './expect.js';

// RFC 7396, appendix A: original, patch, result.
const RFC_7396 = [
  [{ a: 'b' }, { a: 'c' }, { a: 'c' }],
  [{ a: 'b' }, { b: 'c' }, { a: 'b', b: 'c' }],
  [{ a: 'b' }, { a: null }, {}],
  [{ a: 'b', b: 'c' }, { a: null }, { b: 'c' }],
  [{ a: ['b'] }, { a: 'c' }, { a: 'c' }],
  [{ a: 'c' }, { a: ['b'] }, { a: ['b'] }],
  [{ a: { b: 'c' } }, { a: { b: 'd', c: null } }, { a: { b: 'd' } }],
  [{ a: [{ b: 'c' }] }, { a: [1] }, { a: [1] }],
  [['a', 'b'], ['c', 'd'], ['c', 'd']],
  [{ a: 'b' }, ['c'], ['c']],
  [{ a: 'foo' }, null, null],
  [{ a: 'foo' }, 'bar', 'bar'],
  [{ e: null }, { a: 1 }, { e: null, a: 1 }],
  [[1, 2], { a: 'b', c: null }, { a: 'b' }],
  [{}, { a: { bb: { ccc: null } } }, { a: { bb: {} } }],
];

const START = {
  straight: { on: true, parameters: { level: 80 } },
  voices: { warm: { name: 'Warm', order: 1, on: true, parameters: { level: 60, octave: 0 } }, low: { name: 'Low', order: 2, on: true, parameters: {} } },
  effects: {},
  slot: 'A1',
  notes: '',
};

export const tests = {
  patches_are_laid_over_as_the_standard_says() {
    for (const [original, patch, result] of RFC_7396) equal(mergePatch(original, patch), result);
  },
  laying_over_alters_nothing_that_was_given() {
    const [start, patch] = [structuredClone(START), { voices: { warm: { parameters: { level: 72 } } } }];
    mergePatch(start, patch).voices.warm.parameters.level = 1;
    equal(start, START);
    equal(patch.voices.warm.parameters.level, 72);
  },
  a_difference_laid_over_gives_the_other() {
    const documents = RFC_7396.flatMap(([original, , result]) => [original, result])
      .filter((each) => each !== null && typeof each === 'object' && !Array.isArray(each) && !('e' in each));
    documents.push(START, { ...START, slot: 'A2', voices: { warm: START.voices.warm } }, { ...START, effects: { echo: { type: 'delay', order: 1, on: false, parameters: {} } } });
    for (const from of documents) for (const to of documents) equal(mergePatch(from, diffPatch(from, to)), to);
  },
  the_difference_holds_only_what_differs() {
    equal(diffPatch(START, START), {});
    const next = structuredClone(START);
    next.voices.warm.parameters.level = 72;
    delete next.voices.low;
    equal(diffPatch(START, next), { voices: { warm: { parameters: { level: 72 } }, low: null } });
  },
  a_key_named_like_a_prototype_is_a_key() {
    const patch = JSON.parse('{"__proto__": {"hurt": 1}}');
    equal(({}).hurt, undefined);
    equal(Object.hasOwn(mergePatch({}, patch), '__proto__'), true);
    equal(({}).hurt, undefined);
  },
  an_edit_makes_a_value_this_pieces() {
    const patch = editedPatch(START, {}, (whole) => { whole.straight.parameters.level = 65; });
    equal(patch, { straight: { parameters: { level: 65 } } });
    equal(isOwn(patch, '/straight/parameters/level'), true);
    equal(isOwn(patch, '/straight/on'), false);
  },
  a_value_written_back_to_the_starting_points_is_no_longer_this_pieces() {
    const patch = editedPatch(START, { straight: { parameters: { level: 65 } } }, (whole) => { whole.straight.parameters.level = 80; });
    equal(patch, {});
  },
  what_the_piece_says_stays_its_own_when_the_starting_point_comes_to_say_the_same() {
    const patch = editedPatch(START, { straight: { parameters: { level: 80 } } }, (whole) => { whole.slot = 'A9'; });
    equal(patch, { straight: { parameters: { level: 80 } }, slot: 'A9' });
  },
  a_value_is_given_back_without_leaving_a_trace() {
    equal(givenBack({ straight: { parameters: { level: 65 } } }, '/straight/parameters/level'), {});
    equal(givenBack({ straight: { parameters: { level: 65, tone: 1 } } }, '/straight/parameters/level'), { straight: { parameters: { tone: 1 } } });
    equal(givenBack({ voices: { low: null } }, '/voices/low'), {});
    equal(givenBack({ slot: 'A9' }, '/notes'), { slot: 'A9' });
  },
  everything_in_an_added_voice_is_this_pieces() {
    const patch = { voices: { air: { name: 'Air', order: 3, on: true, parameters: { level: 22 } } } };
    equal(isOwn(patch, '/voices/air/parameters/level'), true);
    equal(hasOwnWithin(patch, '/voices/air'), true);
    equal(hasOwnWithin(patch, '/voices/warm'), false);
  },
  what_is_left_out_can_be_named() {
    equal(leftOut({ voices: { low: null, warm: { on: false } }, effects: { 'a/b': null } }), ['/voices/low', '/effects/a~1b']);
    equal(leftOut({}), []);
  },
};
