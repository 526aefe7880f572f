import { byMonth } from '/pages/log-rules.js';
import { eventWords, sensitivityStep } from '/pages/log-rehearsal-rules.js';
import { expiryInstant } from '/parts/share-rules.js';
import { equal } from './expect.js';

export const tests = {
  entries_are_gathered_by_month() {
    const entry = (date) => ({ content: { date } });
    equal(byMonth([entry('2026-11-21'), entry('2026-11-01'), entry('2026-10-31')]).map(([month, group]) => [month, group.length]), [['November 2026', 2], ['October 2026', 1]]);
    equal(byMonth([]), []);
  },
  occasions_have_words() {
    equal(eventWords('bench'), 'At the bench');
  },
  a_string_shows_what_it_was() {
    const rig = (sensitivity) => ({ assignments: { 1: { sensitivity } } });
    equal(sensitivityStep(rig(20), rig(22), '1'), { was: 20, now: 22 });
    equal(sensitivityStep(rig(20), rig(20), '1'), null);
    equal(sensitivityStep(null, rig(22), '1'), { now: 22 });
  },
  a_share_ends_after_its_days_or_never() {
    equal(expiryInstant('7', new Date('2026-11-26T20:00:00Z')), '2026-12-03T20:00:00.000Z');
    equal(expiryInstant('', new Date('2026-11-26T20:00:00Z')), undefined);
  },
};
