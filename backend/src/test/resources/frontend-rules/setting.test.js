import { NOTE_VALUES, firstValue, noteMillis, parseFree, parseTime, settingLabel, settingWords, soundSummary, unusual } from '/setting-rules.js';
import { equal, near } from './expect.js';

const LEVEL = { type: 'range', label: 'Level', min: 0, max: 100, step: 1, unit: '%' };
const TIME = { type: 'time', label: 'Time', minMillis: 1, maxMillis: 2000 };
const SOUND = { type: 'choice', label: 'Sound', choices: ['strings', 'glass'] };

export const tests = {
  note_values_last_as_the_tempo_says() {
    // 60000 ms / bpm for a quarter note; common practice, no source.
    for (const [note, bpm, millis] of [
      ['quarter', 60, 1000], ['quarter', 120, 500], ['eighth', 120, 250], ['dotted eighth', 120, 375], ['triplet eighth', 120, 166.6667],
      ['half', 90, 1333.3333], ['whole', 120, 2000], ['sixteenth', 100, 150], ['thirty-second', 75, 100], ['dotted quarter', 72, 1250],
    ]) near(noteMillis(note, bpm), millis, 1e-3);
  },
  three_of_a_triplet_last_as_long_as_two_plain() {
    for (const length of ['whole', 'half', 'quarter', 'eighth', 'sixteenth', 'thirty-second']) near(3 * noteMillis(`triplet ${length}`, 97), 2 * noteMillis(length, 97), 1e-9);
  },
  every_note_value_is_read_by_its_name() {
    equal(NOTE_VALUES.length, 18);
    for (const note of NOTE_VALUES) equal(parseTime(note), { note });
  },
  what_is_no_note_value_lasts_no_time() {
    for (const note of ['', 'long', 'dotted', 'dotted dotted eighth', 'constructor']) equal(noteMillis(note, 120), null);
  },
  times_are_read_as_players_write_them() {
    equal(parseTime('375'), 375);
    equal(parseTime(' 375 ms'), 375);
    equal(parseTime('0,4 s'), 400);
    equal(parseTime('1/8'), { note: 'eighth' });
    equal(parseTime('1/8.'), { note: 'dotted eighth' });
    equal(parseTime('1/16t'), { note: 'triplet sixteenth' });
    equal(parseTime('Eighth dotted'), { note: 'dotted eighth' });
    equal(parseTime('quarter note'), { note: 'quarter' });
    for (const none of ['', 'soon', '1/5', 'ms', '1/8x', 'dotted']) equal(parseTime(none), null);
  },
  values_stand_with_their_unit_and_what_they_come_to() {
    equal(settingWords(72, LEVEL), { text: '72', unit: '%', aside: '' });
    equal(settingWords(-1.5, { type: 'range', unit: '' }), { text: '−1.5', unit: '', aside: '' });
    equal(settingWords({ note: 'dotted eighth' }, TIME, 216), { text: 'dotted eighth', unit: '', aside: '208.3 ms' });
    equal(settingWords({ note: 'dotted eighth' }, TIME), { text: 'dotted eighth', unit: '', aside: '' });
    equal(settingWords(20, TIME), { text: '20', unit: 'ms', aside: '' });
    equal(settingWords(true), { text: 'on', unit: '', aside: '' });
    equal(settingWords(undefined), { text: '', unit: '', aside: '' });
  },
  the_ends_of_a_range_are_usual_and_what_lies_beyond_is_not() {
    equal(unusual(-1, LEVEL), 'The synth’s sheet goes from 0 to 100 %.');
    equal(unusual(0, LEVEL), null);
    equal(unusual(100, LEVEL), null);
    equal(unusual(101, LEVEL), 'The synth’s sheet goes from 0 to 100 %.');
  },
  a_note_value_is_judged_by_how_long_it_lasts() {
    equal(unusual({ note: 'whole' }, TIME, 120), null);
    equal(unusual({ note: 'whole' }, TIME, 119), 'The synth’s sheet goes from 1 to 2000 ms.');
    equal(unusual({ note: 'whole' }, TIME), null);
  },
  what_the_synth_does_not_know_is_kept_and_named() {
    equal(unusual('wind', SOUND), 'The synth’s sheet knows strings, glass.');
    equal(unusual(3, undefined), 'The synth’s sheet does not know this setting.');
    equal(unusual('loud', LEVEL), 'The synth’s sheet expects a number here.');
    equal(unusual('yes', { type: 'switch' }), 'The synth’s sheet expects on or off here.');
    equal(unusual('soon', TIME), 'The synth’s sheet expects a time here.');
  },
  a_setting_starts_within_its_range() {
    for (const parameter of [LEVEL, TIME, SOUND, { type: 'switch' }, { type: 'range', min: -50, max: -10 }, { type: 'range', min: 5, max: 9 }]) equal(unusual(firstValue(parameter), parameter), null);
    equal(parseFree(' 12 '), 12);
    equal(parseFree(' soft '), 'soft');
    equal(settingLabel(undefined, 'low-cut'), 'Low cut');
  },
  a_sound_is_told_by_what_is_on() {
    const settings = {
      straight: { on: true, parameters: { level: 65 } },
      voices: { b: { name: 'Air', order: 2, on: true, parameters: {} }, a: { name: 'Warm', order: 1, on: true, parameters: { level: 72 } }, c: { name: 'Low', order: 3, on: false, parameters: {} } },
      effects: { x: { type: 'delay', order: 2, on: true }, y: { type: 'own thing', order: 1, on: true } },
      slot: 'A13',
    };
    equal(soundSummary(settings, { effects: { delay: { label: 'Delay' } } }), { slot: 'A13', straight: 'Straight sound 65', voices: ['Warm 72', 'Air'], effects: ['own thing', 'Delay'] });
    equal(soundSummary(undefined), { slot: '', straight: 'Straight sound', voices: [], effects: [] });
  },
};
