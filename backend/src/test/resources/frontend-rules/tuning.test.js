import { TUNINGS, addString, hertz, midiOf, nameOf, plainName, stringsOf } from '/tuning-rules.js';
import { equal, near } from './expect.js';

export const tests = {
  notes_have_their_midi_numbers() {
    // Scientific pitch names: middle C is C4 and number 60, A4 is 69.
    equal(midiOf('C4'), 60);
    equal(midiOf('A4'), 69);
    equal(midiOf('E5'), 76);
    equal(midiOf('G3'), 55);
    equal(midiOf('Bb3'), 58);
    equal(midiOf('B♭3'), 58);
    equal(midiOf('f#4'), 66);
    equal(midiOf('C-1'), 0);
    equal(midiOf('G9'), 127);
  },
  what_is_no_note_is_none() {
    for (const name of ['', 'H4', 'E', '5', 'Ebb4', 'G#9', 'Cb-1', 'E5x']) equal(midiOf(name), null);
  },
  open_strings_sound_where_equal_temperament_puts_them() {
    // ISO 16: A4 is 440 Hz; the others follow by the twelfth root of two.
    near(hertz(69, 0, 440), 440, 0);
    near(hertz(76, 0, 440), 659.255, 0.001);
    near(hertz(62, 0, 440), 293.665, 0.001);
    near(hertz(55, 0, 440), 195.998, 0.001);
    near(hertz(69, 1200, 440), 880, 1e-9);
    near(hertz(69, 0, 415), 415, 0);
  },
  names_are_read_again() {
    for (let midi = 0; midi < 128; midi++) equal(midiOf(nameOf(midi)), midi);
  },
  names_are_kept_plain() {
    equal(plainName(' b♭3 '), 'Bb3');
    equal(plainName('F♯4'), 'F#4');
  },
  every_tuning_to_start_from_is_one() {
    for (const [, notes] of TUNINGS) {
      equal(notes.length >= 4 && notes.length <= 7, true);
      equal(notes.every((note) => midiOf(note) !== null), true);
    }
  },
  a_further_string_lies_a_fifth_below() {
    const strings = stringsOf(['E5', 'A4', 'D4', 'G3']);
    addString(strings);
    equal(strings[5], { note: 'C3', cents: 0 });
  },
};
