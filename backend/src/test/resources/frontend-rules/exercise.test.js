import { linesOf, loudnessMarks, whereAt } from '/exercise-rules.js';
import { equal } from './expect.js';

const stroke = (atBeat, beats, loudness = 'mf') => ({ string: 1, note: 'E5', atBeat, beats, loudness, bow: 'down' });
const PASSAGE = { title: 'Long bows', instruction: '', firstBeat: 4, beats: 12, strokes: [stroke(4, 6), stroke(10, 6)] };

export const tests = {
  a_passage_is_cut_into_lines_and_a_long_note_goes_on_in_the_next() {
    const lines = linesOf(PASSAGE, 8);
    equal(lines.map(({ from, to }) => [from, to]), [[0, 8], [8, 16]]);
    equal(lines[0].strokes.map(({ atBeat, beats, goesOn, cameOver }) => [atBeat, beats, goesOn, cameOver]), [[0, 6, false, false], [6, 2, true, false]]);
    equal(lines[1].strokes.map(({ atBeat, beats, goesOn, cameOver }) => [atBeat, beats, goesOn, cameOver]), [[8, 4, false, true]]);
  },
  a_note_that_ends_with_the_line_is_not_in_the_next() {
    equal(linesOf({ ...PASSAGE, strokes: [stroke(4, 8)] }, 8)[1].strokes, []);
  },
  loudness_is_written_where_it_changes() {
    equal(loudnessMarks([stroke(0, 1, 'pp'), stroke(1, 1, 'pp'), stroke(2, 1, 'ff')]), ['pp', '', 'ff']);
  },
  the_player_is_told_what_comes() {
    const passages = [PASSAGE, { ...PASSAGE, title: 'Repeats', firstBeat: 20 }];
    equal(whereAt(passages, 4, 0).words, 'count 1');
    equal(whereAt(passages, 4, 3.9).words, 'count 4');
    equal(whereAt(passages, 4, 4).words, 'Long bows, beat 1');
    equal(whereAt(passages, 4, 17.5).words, 'Repeats in 3');
    equal(whereAt(passages, 4, 40).words, 'done');
  },
};
