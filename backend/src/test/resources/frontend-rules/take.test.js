import { FAULT_KINDS, clock, countKinds, countsInWords, faultKind, figureInWords, inView, lanesOf, longest, moved, nameOf, nextFault, noteNumber, showing, thresholdGroups, tickSeconds, zoomed } from '/take-rules.js';
import { equal, fails, near } from './expect.js';

const WHOLE = { from: 0, to: 60 };
const note = (string, noteNumber, on, off, id = 0) => ({ id, string, noteNumber, velocity: 80, on, off });

export const tests = {
  every_kind_of_fault_has_a_shape_of_its_own() {
    const kinds = ['split', 'staircase', 'ghost', 'blip', 'below the open string', 'above the fingerboard', 'hanging', 'late'];
    equal(Object.keys(FAULT_KINDS).sort(), [...kinds].sort());
    equal(new Set(kinds.map((kind) => faultKind(kind).path)).size, kinds.length);
    equal(faultKind('something new').words, 'something new');
  },
  notes_are_read_and_named() {
    equal(noteNumber('E5'), 76);
    equal(noteNumber('Bb3'), 58);
    equal(noteNumber('F#4'), 66);
    equal(nameOf(76), 'E5');
    equal(nameOf(58), 'B♭3');
    fails(() => noteNumber('H2'), 'no note');
  },
  a_lane_holds_its_open_note_a_fifth_and_whatever_else_sounds_in_it() {
    const lanes = lanesOf({ 1: 'E5', 2: 'A4' }, [note(1, 71, 0, 1), note(1, 90, 0, 1), note(3, 10, 0, 1)]);
    equal(lanes, [{ string: 1, open: 76, low: 71, high: 90 }, { string: 2, open: 69, low: 69, high: 76 }]);
  },
  only_notes_that_may_be_in_view_are_looked_at() {
    const notes = Array.from({ length: 100 }, (_, index) => note(1, 76, index, index + 0.5));
    equal(longest(notes), 0.5);
    equal(inView(notes, { from: 10, to: 12 }, 0.5), [10, 12]);
    equal(inView(notes, { from: 10.2, to: 12 }, 0.5), [10, 12]);
    equal(inView([], { from: 0, to: 1 }, 0), [0, 0]);
  },
  ten_thousand_notes_are_searched_not_walked() {
    let touched = 0;
    const notes = new Proxy(Array.from({ length: 10_000 }, (_, index) => note(1, 76, index, index + 0.5)), {
      get(target, key) { touched++; return Reflect.get(target, key); },
    });
    inView(notes, { from: 5000, to: 5020 }, 1);
    if (touched > 60) throw new Error(`${touched} looks`);
  },
  zooming_keeps_the_moment_under_the_finger_and_stays_within_the_take() {
    const near20 = zoomed({ from: 10, to: 30 }, 0.5, 20, WHOLE);
    equal(near20, { from: 15, to: 25 });
    equal(zoomed({ from: 0, to: 10 }, 100, 5, WHOLE), WHOLE);
    const nearest = zoomed({ from: 0, to: 0.3 }, 0.01, 0.1, WHOLE);
    near(nearest.to - nearest.from, 0.25, 1e-9);
    equal(moved({ from: 50, to: 58 }, 20, WHOLE), { from: 52, to: 60 });
    equal(moved({ from: 5, to: 8 }, -20, WHOLE), { from: 0, to: 3 });
  },
  what_is_in_view_stays_where_it_is() {
    const view = { from: 10, to: 20 };
    equal(showing(view, 15, WHOLE), view);
    near(showing(view, 40, WHOLE).from, 40 - 10 / 3, 1e-9);
  },
  faults_are_stepped_through_in_order_of_time() {
    const faults = [{ id: 'a', at: 1 }, { id: 'b', at: 5 }, { id: 'c', at: 9 }];
    const view = { from: 4, to: 6 };
    equal(nextFault(faults, '', 1, view).id, 'b');
    equal(nextFault(faults, '', -1, view).id, 'b');
    equal(nextFault(faults, 'b', 1, view).id, 'c');
    equal(nextFault(faults, 'c', 1, view).id, 'c');
    equal(nextFault(faults, 'a', -1, view).id, 'a');
    equal(nextFault([], '', 1, view), null);
  },
  times_and_counts_are_written_as_a_player_reads_them() {
    equal(clock(7.42, 1), '0:07.4');
    equal(clock(725), '12:05');
    equal(clock(59.96, 1), '1:00.0');
    equal(tickSeconds(20, 8), 5);
    equal(tickSeconds(7200, 8), 1800);
    equal(countKinds([{ kind: 'ghost' }, { kind: 'blip' }, { kind: 'ghost' }]), { ghost: 2, blip: 1 });
    equal(countsInWords({ blip: 1, ghost: 26 }), '26 ghosts, 1 blip');
    equal(countsInWords({}), 'no faults');
  },
  thresholds_stand_under_what_they_find_with_their_unit() {
    const groups = thresholdGroups([{ name: 'TOUCHING', label: 'Notes touch' }, { name: 'GHOST_START', label: 'Ghost: at first' }, { name: 'SPLIT_GAP_SECONDS', label: 'Widest split' }, { name: 'BOW_START', label: 'Bow change' }]);
    equal(groups.map(([word, all]) => [word, all.length]), [['Notes at large', 1], ['Ghosts', 1], ['Splits: was it a new stroke?', 2]]);
    equal(figureInWords(0.04, 'seconds'), '40 ms');
    equal(figureInWords(-5.6, 'evidence'), '−5.6');
    equal(figureInWords(2.5, 'evidence'), '+2.5');
  },
};
