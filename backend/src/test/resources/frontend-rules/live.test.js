import { LiveWatch } from '/live-rules.js';
import { allRecordings, dropRecording, keepRecording } from '/recordings.js';
import { isKept, midiFile, noteMessage, variableLength } from '/smf-rules.js';
import { showNotebook } from '/tab-notebook.js';
import { equal } from './expect.js';

const VIOLIN = { 1: 'E5', 2: 'A4', 3: 'D4', 4: 'G3' };
const on = (channel, note, velocity) => ({ kind: 'on', channel, note, velocity });
const off = (channel, note) => ({ kind: 'off', channel, note, velocity: 0 });

/** Plays [at, message] and gives back what each string's notes were flagged as, in order of their start. */
function flags(messages, baseChannel = 1) {
  const watch = LiveWatch({ strings: VIOLIN, baseChannel });
  const heard = new Set();
  for (const [at, message] of messages) for (const note of watch.hear(message, at)) heard.add(note);
  return [...heard].sort((one, other) => one.on - other.on || one.string - other.string).map((note) => [note.string, note.note, note.flag]);
}

export const tests = {
  async a_recording_is_found_in_the_notebook_it_was_made_for() {
    const found = async (notebook) => {
      showNotebook(notebook);
      return (await allRecordings()).map(({ id }) => id);
    };
    showNotebook('mine');
    await keepRecording({ id: 'reel', startedAt: '2026-11-26T20:00:00Z', strings: ['E5'], messages: [] });
    try {
      equal([await found('mine'), await found('the band’s')], [['reel'], []]);
    } finally {
      await dropRecording('reel');
      showNotebook('');
    }
  },
  plain_playing_is_flagged_nowhere() {
    equal(flags([[0, on(2, 69, 90)], [400, off(2, 69)], [400, on(2, 71, 85)], [800, off(2, 71)]]), [[2, 69, ''], [2, 71, '']]);
  },
  a_much_quieter_note_of_the_same_pitch_is_a_ghost() {
    equal(flags([[0, on(2, 81, 100)], [20, on(1, 81, 75)]]), [[2, 81, ''], [1, 81, 'ghost']]);
    equal(flags([[0, on(2, 81, 100)], [20, on(1, 81, 76)]]), [[2, 81, ''], [1, 81, '']]);
  },
  a_far_quieter_note_is_a_ghost_at_any_pitch() {
    equal(flags([[0, on(2, 74, 100)], [20, on(1, 79, 60)]]).at(-1), [1, 79, 'ghost']);
    equal(flags([[0, on(2, 74, 100)], [20, on(1, 79, 61)]]).at(-1), [1, 79, '']);
  },
  a_double_stop_and_a_unison_are_left_alone() {
    equal(flags([[0, on(2, 76, 90)], [5, on(1, 76, 84)]]), [[2, 76, ''], [1, 76, '']]);
    equal(flags([[0, on(3, 62, 90)], [3, on(4, 55, 80)]]), [[3, 62, ''], [4, 55, '']]);
  },
  a_leak_that_comes_a_moment_before_its_stroke_is_found_when_the_stroke_comes() {
    equal(flags([[0, on(1, 81, 40)], [30, on(2, 81, 100)]]), [[1, 81, 'ghost'], [2, 81, '']]);
    equal(flags([[0, on(1, 81, 40)], [60, on(2, 81, 100)]]), [[1, 81, ''], [2, 81, '']]);
  },
  a_short_octave_before_its_note_is_a_blip() {
    equal(flags([[0, on(3, 76, 70)], [40, off(3, 76)], [42, on(3, 64, 90)]]), [[3, 76, 'blip'], [3, 64, '']]);
    equal(flags([[0, on(3, 76, 70)], [90, off(3, 76)], [92, on(3, 64, 90)]]), [[3, 76, ''], [3, 64, '']]);
  },
  a_flicker_inside_a_note_is_a_blip_and_a_trill_is_not() {
    equal(flags([[0, on(3, 64, 90)], [500, on(3, 70, 60)], [530, on(3, 64, 85)]]).map(([, , flag]) => flag), ['', 'blip', '']);
    equal(flags([[0, on(3, 64, 90)], [90, on(3, 66, 85)], [180, on(3, 64, 88)], [270, on(3, 66, 86)]]).map(([, , flag]) => flag), ['', '', '', '']);
  },
  a_note_below_the_open_string_is_told() {
    equal(flags([[0, on(1, 75, 90)]]), [[1, 75, 'below the open string']]);
    equal(flags([[0, on(1, 76, 90)]]), [[1, 76, '']]);
  },
  strings_begin_at_any_channel_and_other_channels_are_not_heard() {
    equal(flags([[0, on(11, 76, 90)], [0, on(10, 20, 90)], [0, on(15, 20, 90)]], 11), [[1, 76, '']]);
  },
  lengths_are_written_as_the_standard_has_them() {
    // Standard MIDI Files 1.0, "Conventions": table of variable-length quantities.
    equal(variableLength(0x40), [0x40]);
    equal(variableLength(0x80), [0x81, 0x00]);
    equal(variableLength(0x2000), [0xc0, 0x00]);
    equal(variableLength(0x1fffff), [0xff, 0xff, 0x7f]);
    equal(variableLength(0xfffffff), [0xff, 0xff, 0xff, 0x7f]);
  },
  a_recording_becomes_a_file() {
    const bytes = midiFile([{ at: 0, data: [0x90, 60, 100] }, { at: 500, data: [0x80, 60, 0] }]);
    equal(String.fromCharCode(...bytes.slice(0, 4), ...bytes.slice(14, 18)), 'MThdMTrk');
    equal([...bytes.slice(22)], [0, 0xff, 0x51, 3, 7, 0xa1, 0x20, 0, 0x90, 60, 100, 0x83, 0x60, 0x80, 60, 0, 0, 0xff, 0x2f, 0]);
    equal(bytes[21], bytes.length - 22);
  },
  clock_and_system_messages_stay_out() {
    equal([[0x90, 1, 1], [0xc0, 5], [0xf8], [0xf0, 1, 2], [0xfe]].map(isKept), [true, true, false, false, false]);
    equal(noteMessage([0x92, 60, 0]), { kind: 'off', channel: 3, note: 60, velocity: 0 });
    equal(noteMessage([0xe0, 0, 64]), null);
  },
};
