import { BenchKeeping } from '/bench-keeping.js';
import { equal } from './expect.js';

/** A sheet that answers its saves with what it is told. */
function sheet(id, revision, { isDirty = false, outcomes = ['saved'] } = {}) {
  const listeners = [];
  return {
    id, isDirty, reason: '', state: isDirty ? 'draft' : 'clean', keptHere: true, foundDraftFrom: '', mergedWith: [], saves: 0,
    envelope: { revision },
    content: { instrument: { id: 'i', revision: 1 }, synth: { id: 's', revision: 1 } },
    onChange(listener) {
      listeners.push(listener);
      return () => {};
    },
    tell() {
      for (const listener of listeners) listener();
    },
    async save() {
      this.saves++;
      this.state = outcomes.shift() ?? 'saved';
      if (this.state !== 'saved') return null;
      this.isDirty = false;
      this.envelope = { revision: this.envelope.revision + 1 };
      return this.envelope;
    },
  };
}

export const tests = {
  async the_gear_is_saved_first_and_the_rig_holds_what_lay_on_the_bench() {
    const [rig, instrument, synth] = [sheet('r', 4, { isDirty: true }), sheet('i', 1, { isDirty: true }), sheet('s', 1)];
    const bench = new BenchKeeping(rig, instrument, synth);
    equal(bench.state, 'draft');
    await bench.save();
    equal([instrument.saves, synth.saves, rig.saves], [1, 0, 1]);
    equal(rig.content.instrument, { id: 'i', revision: 2 });
    equal(rig.content.synth, { id: 's', revision: 1 });
    equal(instrument.reason, 'At the wiring bench');
    equal(bench.state, 'saved');
  },
  async a_refused_instrument_stops_the_rig() {
    const [rig, instrument, synth] = [sheet('r', 4, { isDirty: true }), sheet('i', 1, { isDirty: true, outcomes: ['refused'] }), sheet('s', 1)];
    const bench = new BenchKeeping(rig, instrument, synth);
    equal(await bench.save(), null);
    equal([rig.saves, bench.state, rig.content.instrument.revision], [0, 'refused', 1]);
  },
  async the_rig_follows_when_the_instrument_went_through_later() {
    const [rig, instrument, synth] = [sheet('r', 4, { isDirty: true }), sheet('i', 1, { isDirty: true, outcomes: ['away'] }), sheet('s', 1)];
    const bench = new BenchKeeping(rig, instrument, synth);
    await bench.save();
    equal([bench.state, rig.saves], ['away', 0]);
    await instrument.save();
    instrument.tell();
    await new Promise((resolve) => { setTimeout(resolve); });
    equal([rig.saves, rig.content.instrument.revision], [1, 2]);
  },
  a_gear_sheet_that_nobody_saved_here_starts_nothing() {
    const [rig, instrument, synth] = [sheet('r', 4, { isDirty: true }), sheet('i', 1), sheet('s', 1)];
    new BenchKeeping(rig, instrument, synth);
    instrument.state = 'saved';
    instrument.tell();
    equal(rig.saves, 0);
  },
};
