import { assignmentOf, firstRig, remarks, stringNumbers, withGear } from '/rig-rules.js';
import { equal } from './expect.js';

const INSTRUMENT = { id: 'i', title: 'Fiddle', content: { strings: { 1: { note: 'E5' }, 2: { note: 'A4' }, 3: { note: 'D4' }, 4: { note: 'G3' }, 5: { note: 'C3' } } } };
const SYNTH = { id: 's', title: 'Module', content: { inputs: 4, sensitivityScale: { min: 0, max: 50, step: 1, customaryStart: 22 } } };

export const tests = {
  a_first_rig_sends_each_string_to_the_input_of_its_number() {
    const rig = firstRig(INSTRUMENT, SYNTH, '2026-11-26');
    equal(rig.title, 'Fiddle into Module');
    equal(rig.assignments[1], { input: 1, sensitivity: 22, trimDecibels: 0 });
    equal(rig.assignments[5], { sensitivity: 22, trimDecibels: 0 });
  },
  a_synth_without_a_custom_starts_unset() {
    const rig = firstRig(INSTRUMENT, { ...SYNTH, content: { inputs: 6, sensitivityScale: { min: 0, max: 9, step: 1 } } }, '2026-11-26');
    equal(rig.assignments[1], { input: 1, trimDecibels: 0 });
  },
  nothing_stands_out_about_a_plain_rig() {
    const rig = firstRig(INSTRUMENT, { ...SYNTH, content: { ...SYNTH.content, inputs: 6 } }, '2026-11-26');
    equal(remarks(rig, INSTRUMENT.content, { ...SYNTH.content, inputs: 6 }), []);
  },
  what_stands_out_is_said() {
    const rig = firstRig(INSTRUMENT, SYNTH, '2026-11-26');
    rig.assignments[2].input = 1;
    rig.assignments[3].sensitivity = 51;
    rig.assignments[4].input = 5;
    equal(remarks(rig, INSTRUMENT.content, SYNTH.content), [
      'String 3 is at 51; this synth\'s scale runs from 0 to 50.',
      'String 5 goes to no input: the synth does not hear it.',
      'Strings 1 and 2 share input 1.',
      'Input 5 is beyond the synth\'s 4.',
    ]);
  },
  an_end_of_the_scale_is_still_on_it() {
    const rig = firstRig(INSTRUMENT, { ...SYNTH, content: { ...SYNTH.content, inputs: 6 } }, '2026-11-26');
    rig.assignments[1].sensitivity = 50;
    rig.assignments[2].sensitivity = 0;
    equal(remarks(rig, INSTRUMENT.content, { ...SYNTH.content, inputs: 6 }), []);
  },
  an_assignment_that_is_missing_is_made() {
    const rig = {};
    assignmentOf(rig, '3').sensitivity = 20;
    equal(rig, { assignments: { 3: { trimDecibels: 0, sensitivity: 20 } } });
  },
  another_instrument_or_synth_takes_nothing_away_that_was_written() {
    const other = { id: 'o', title: 'Viola', content: { strings: { 1: { note: 'A4' }, 2: { note: 'D4' } } } };
    const wide = { id: 'w', title: 'Wide', content: { inputs: 6, sensitivityScale: { min: 0, max: 9, step: 1, customaryStart: 4 } } };
    const was = { instrument: INSTRUMENT, synth: SYNTH };
    const rig = { ...firstRig(INSTRUMENT, SYNTH, '2026-11-26'), date: '2026-10-01', notes: 'borrowed' };
    rig.assignments[2].sensitivity = 31;
    const next = withGear(rig, was, { instrument: other, synth: wide });
    equal(next, { title: 'Viola into Wide', date: '2026-10-01', instrument: { id: 'o' }, synth: { id: 'w' }, notes: 'borrowed',
      assignments: { 1: { input: 1, sensitivity: 4, trimDecibels: 0 }, 2: { input: 2, sensitivity: 31, trimDecibels: 0 } } });
    equal(withGear({ ...rig, title: 'Mine' }, was, { instrument: other, synth: SYNTH }).title, 'Mine');
    delete rig.assignments[1].sensitivity;
    equal(withGear(rig, was, { instrument: other, synth: SYNTH }).assignments[1].sensitivity, undefined);
  },
  strings_are_counted_from_the_highest() {
    equal(stringNumbers(INSTRUMENT.content), ['1', '2', '3', '4', '5']);
  },
};
