import { applied, bare, newStroke, outline, reason, scaleOf, shade, shareScale, signedTenth, tenth, widthForThumbs, withEnd, withReason } from '/level-rules.js';
import { equal } from './expect.js';

const STROKES = [{ string: 2, from: 3, to: 4, loudness: 'soft', rmsDbfs: -20 }, { string: 1, from: 1, to: 2, loudness: 'loud' }];

export const tests = {
  what_the_player_wrote_comes_before_what_the_bench_says_and_that_is_said_once() {
    equal(withReason('', 'Level bench'), 'Level bench');
    equal(withReason('gut strings', 'Level bench'), 'gut strings; Level bench');
    equal(withReason('gut strings; Level bench', 'Level bench'), 'gut strings; Level bench');
    equal(withReason('x'.repeat(999), 'Level bench').length, 1000);
  },
  decibels_are_told_to_a_tenth_and_never_as_minus_nothing() {
    equal(tenth(-41.26), '−41.3');
    equal(tenth(-0.01), '0');
    equal(tenth(null), '–');
    equal(signedTenth(1.21), '+1.2');
    equal(signedTenth(0.01), '0');
    equal(signedTenth(-3), '−3');
  },
  a_stroke_keeps_its_length_and_stays_within_the_recording() {
    equal(withEnd(STROKES[1], 'from', -1, 5).from, 0);
    equal(withEnd(STROKES[1], 'from', 4, 5).from, 1.9);
    equal(withEnd(STROKES[1], 'to', 9, 5).to, 5);
    equal(withEnd(STROKES[1], 'to', 0, 5).to, 1.1);
  },
  strokes_are_sent_bare_and_in_order_of_time() {
    equal(bare(STROKES), [{ string: 1, from: 1, to: 2, loudness: 'loud' }, { string: 2, from: 3, to: 4, loudness: 'soft' }]);
  },
  a_new_stroke_lies_in_the_longest_gap() {
    const stroke = newStroke(STROKES, 10);
    equal([stroke.from, stroke.to], [6.5, 7.5]);
    equal(newStroke([], 10).from, 4.5);
  },
  leaks_are_shaded_in_steps_of_ten_decibels() {
    equal([-80, -60, -51, -50, -11, -10, 0].map(shade), [0, 0, 0, 1, 4, 5, 5]);
  },
  strokes_are_drawn_wide_enough_for_a_thumb_within_reason() {
    equal(widthForThumbs(STROKES, 10), 440);
    equal(widthForThumbs(STROKES, 3600), 6000);
    equal(widthForThumbs([], 10), 0);
  },
  the_outline_shows_the_root_of_every_peak() {
    equal(outline([1, 0.25], 1, { width: 10, middle: 20, half: 10 }), 'M2.5 10L7.5 15L7.5 25L2.5 30Z');
  },
  the_scale_reaches_in_tens_around_all_windows() {
    equal(scaleOf([{ lowDbfs: -35, highDbfs: -25, softestStrokeDbfs: -22, loudestLeakDbfs: -38 }]), { low: -40, high: -20 });
  },
  advice_is_applied_with_the_measurement_and_says_what_it_changed() {
    const rig = { title: 'R', date: '2026-01-01', assignments: { 1: { input: 1, sensitivity: 20, trimDecibels: -2 }, 2: { input: 2, sensitivity: 18, trimDecibels: 0 } } };
    const advice = [{ string: 1, setting: 22 }, { string: 2, setting: 18 }, { string: 3, setting: 19 }];
    const summary = { measuredOn: '2026-11-12', from: 'reel.wav' };
    const next = applied(rig, advice, summary, '2026-11-12');
    equal(next.assignments[1], { trimDecibels: -2, input: 1, sensitivity: 22 });
    equal(next.assignments[3], { trimDecibels: 0, sensitivity: 19 });
    equal([next.date, next.levels], ['2026-11-12', summary]);
    equal(rig.assignments[1].sensitivity, 20);
    equal(reason(rig, advice, summary, true), 'Level bench, 12 Nov 2026 (reel.wav): string 1 20 → 22, string 3 19; partly assumed');
  },
  only_measurements_of_one_source_share_a_scale() {
    equal(shareScale({ source: 'recording' }, { source: 'recording' }), true);
    equal(shareScale({ source: 'recording' }, { source: 'take' }), false);
    equal(shareScale(null, { source: 'take' }), false);
  },
};
