import { meterProgress, parseReading, readingWords } from '/parts/meter-rules.js';
import { aroundCircle, movedBy, placesOf, seenFrom, snapped } from '/parts/pin-places-rules.js';
import { cellWords, conditions, confidenceWords, isNews, likelyNews, probeRequest, writeCell } from '/parts/probe-rules.js';
import { equal } from './expect.js';

export const tests = {
  readings_are_read_as_a_meter_shows_them() {
    equal(parseReading('0.3', 'continuity'), { read: 'ohms', ohms: 0.3 });
    equal(parseReading('0', 'continuity'), { read: 'ohms', ohms: 0 });
    equal(parseReading('4.7 kΩ', 'resistance'), { read: 'ohms', ohms: 4700 });
    for (const typed of ['OL', 'o.l', 'open', 'no connection', 'no', '∞']) equal(parseReading(typed, 'isolation'), { read: 'open' });
    equal(parseReading('−7,02 V', 'voltage'), { read: 'volts', volts: -7.02 });
  },
  an_empty_field_takes_the_reading_back_and_nonsense_changes_nothing() {
    equal(parseReading('  ', 'voltage'), null);
    for (const [typed, kind] of [['open', 'voltage'], ['x', 'continuity'], ['-3', 'resistance'], ['5000', 'voltage']]) equal(parseReading(typed, kind), undefined);
  },
  a_reading_is_read_back_from_its_own_words() {
    for (const reading of [{ read: 'ohms', ohms: 0.3 }, { read: 'ohms', ohms: 4700 }, { read: 'ohms', ohms: 1e6 }, { read: 'open' }]) equal(parseReading(readingWords(reading), 'resistance'), reading);
    equal(parseReading(readingWords({ read: 'volts', volts: -1.04 }), 'voltage'), { read: 'volts', volts: -1.04 });
    equal(readingWords(undefined), '');
  },
  the_plan_counts_good_wrong_left_and_gone() {
    const verdicts = [{ step: 'a', judgement: 'good' }, { step: 'b', judgement: 'wrong' }, { step: 'z', judgement: 'misplaced' }];
    equal(meterProgress([{ id: 'a' }, { id: 'b' }, { id: 'c' }], verdicts), { good: 1, wrong: 1, left: 1, gone: ['z'] });
  },
  pins_without_places_stand_in_order_around() {
    equal(aroundCircle(['1', '2', '3', '4']), { 1: { x: 0, y: 0.8 }, 2: { x: 0.8, y: 0 }, 3: { x: 0, y: -0.8 }, 4: { x: -0.8, y: 0 } });
    equal(placesOf({ 10: { x: 0, y: 0 }, 2: {} })[2], { x: 0, y: 0.8 });
    equal(placesOf({ 1: { x: 0.5, y: -1 } }), { 1: { x: 0.5, y: -1 } });
  },
  the_solder_side_is_the_mirror_image_and_mirroring_twice_is_nothing() {
    const place = { x: 0.35, y: 0.2 };
    equal(seenFrom(place, 'mating', 'solder'), { x: -0.35, y: 0.2 });
    equal(seenFrom(seenFrom(place, 'mating', 'solder'), 'mating', 'solder'), place);
    equal(seenFrom(place, 'solder', 'solder'), place);
  },
  arrow_keys_move_a_pin_and_never_off_the_face() {
    equal(movedBy({ x: 0, y: 0 }, 'ArrowUp'), { x: 0, y: 0.05 });
    equal(movedBy({ x: -1, y: 0 }, 'ArrowLeft'), { x: -1, y: 0 });
    equal(movedBy({ x: 0, y: 0 }, 'Enter'), null);
    equal(Object.is(snapped(-0.001), 0), true);
    equal(snapped(7), 1);
  },
  a_cell_is_written_read_and_taken_back_without_a_trace() {
    const content = {};
    equal(writeCell(content, '3', 'ground', 'ohms', 'no'), true);
    equal(writeCell(content, '3', 'silence', 'dcVolts', '7,1'), true);
    equal(writeCell(content, '3', '2', 'acMillivolts', '40'), true);
    equal(content.probe, { 3: { toGround: { read: 'open' }, silence: { dcVolts: 7.1 }, bowed: { 2: { acMillivolts: 40 } } } });
    equal(cellWords(content.probe, '3', '2', 'acMillivolts'), '40');
    equal(cellWords(content.probe, '3', '1', 'acMillivolts'), '');
    for (const [condition, unit] of [['ground', 'ohms'], ['silence', 'dcVolts'], ['2', 'acMillivolts']]) equal(writeCell(content, '3', condition, unit, ''), true);
    equal(content, {});
  },
  a_cell_that_makes_no_sense_changes_nothing() {
    const content = {};
    for (const [condition, unit, typed] of [['1', 'acMillivolts', '-1'], ['1', 'acMillivolts', '100001'], ['silence', 'dcVolts', '1001'], ['ground', 'ohms', 'x']]) equal(writeCell(content, '1', condition, unit, typed), false);
    equal(content, {});
  },
  every_pin_is_asked_about_and_every_string_has_a_column() {
    equal(probeRequest({ connector: { pins: { 1: {}, 2: {} } }, strings: { 1: {}, 2: {}, 3: {}, 4: {} }, probe: { 2: { toGround: { read: 'open' } } } }), { strings: 4, pins: { 1: {}, 2: { toGround: { read: 'open' } } } });
    equal(conditions(['1', '2']).map(({ key }) => key), ['ground', 'silence', '1', '2']);
  },
  only_likely_guesses_that_say_something_new_are_offered_together() {
    const guesses = { 1: { role: { carries: 'ground' }, confidence: 0.9 }, 2: { role: { carries: 'string', string: 2 }, confidence: 0.7 }, 3: { role: { carries: 'mixed' }, confidence: 0.4 }, 4: { role: { carries: 'unknown' }, confidence: 1 } };
    const pins = { 1: { role: { carries: 'ground' } }, 2: { role: { carries: 'string', string: 1 } }, 3: { role: { carries: 'unknown' } }, 4: { role: { carries: 'unknown' } } };
    equal(likelyNews(guesses, pins), ['2']);
    equal(isNews(guesses[3], pins[3]), true);
  },
  a_measured_rail_is_no_news_when_it_is_written_down_nearly_so() {
    const guess = { role: { carries: 'supply', volts: 7.1 } };
    equal(isNews(guess, { role: { carries: 'supply', volts: 7, maxMilliamps: 20 } }), false);
    equal(isNews(guess, { role: { carries: 'supply', volts: -7 } }), true);
  },
  confidence_is_a_rank_in_words() {
    equal(confidenceWords(0.95), 'sure, 10 of 10');
    equal(confidenceWords(0.6), 'likely, 6 of 10');
    equal(confidenceWords(0.2), 'a guess, 2 of 10');
  },
};
