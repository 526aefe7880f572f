/**
 * bench-keeping.js: the three sheets that lie on the wiring bench (instrument, synth, rig) kept as one: one save bar, one
 * press. The gear is saved first; then the rig, holding the revisions of the gear that were on the bench.
 *
 *   const bench = await openBench(rigId);
 *   bench.rig.content, bench.instrument.change(…), bench.save()      // see save.js; SaveBar takes the bench itself
 */
import { openSheet } from './save.js';

/** The first of these that a sheet is in is what the bench is in. */
const STATES = ['sending', 'conflict', 'refused', 'away', 'draft', 'merged', 'saved', 'clean'];

/** @param {string} rigId */
export async function openBench(rigId) {
  const rig = await openSheet('rigs', rigId);
  const [instrument, synth] = await Promise.all([openSheet('instruments', rig.content.instrument.id), openSheet('synths', rig.content.synth.id)]);
  return new BenchKeeping(rig, instrument, synth);
}

export class BenchKeeping {
  #saving = false;
  /** A save that stopped because nobody answered; the rest follows when the gear has gone through. */
  #isWaiting = false;
  #listeners = new Set();

  /** @param {import('./save.js').Keeping} rig @param {import('./save.js').Keeping} instrument @param {import('./save.js').Keeping} synth */
  constructor(rig, instrument, synth) {
    this.rig = rig;
    this.instrument = instrument;
    this.synth = synth;
    for (const gear of [instrument, synth]) gear.onChange(() => this.#goOn(gear));
  }

  #goOn(gear) {
    if (!this.#isWaiting || this.#saving || (gear.state !== 'saved' && gear.state !== 'merged')) return;
    this.save();
  }

  get #sheets() {
    return [this.instrument, this.synth, this.rig];
  }

  /** The sheet whose state is the bench's. */
  get #speaker() {
    return STATES.map((state) => this.#sheets.find((sheet) => sheet.state === state)).find(Boolean);
  }

  get state() {
    // Between two of the sheets nothing is under way, and yet it is not done.
    return this.#saving && this.#speaker.state === 'draft' ? 'sending' : this.#speaker.state;
  }

  get problem() {
    return this.#speaker.problem;
  }

  get isDirty() {
    return this.#sheets.some((sheet) => sheet.isDirty);
  }

  get keptHere() {
    return this.#sheets.every((sheet) => sheet.keptHere);
  }

  get foundDraftFrom() {
    return this.#sheets.map((sheet) => sheet.foundDraftFrom).filter(Boolean).sort().at(-1) ?? '';
  }

  get mergedWith() {
    return this.#sheets.flatMap((sheet) => (sheet.state === 'merged' ? sheet.mergedWith : []));
  }

  get envelope() {
    return this.rig.envelope;
  }

  get baseRevision() {
    return this.rig.baseRevision;
  }

  get id() {
    return this.rig.id;
  }

  /** What goes with the rig, such as a rehearsal that was begun elsewhere. */
  get extra() {
    return this.rig.extra;
  }

  get reason() {
    return this.rig.reason;
  }

  set reason(words) {
    this.rig.reason = words;
  }

  touch() {
    this.rig.touch();
  }

  discard() {
    for (const sheet of this.#sheets) if (sheet.isDirty) sheet.discard();
  }

  /** @param {() => void} listener */
  onChange(listener) {
    this.#listeners.add(listener);
    const stops = this.#sheets.map((sheet) => sheet.onChange(listener));
    return () => {
      this.#listeners.delete(listener);
      stops.forEach((stop) => stop());
    };
  }

  /** Whether the rig still holds an earlier revision of its gear than the one on the bench. */
  get holdsOlderGear() {
    return this.#gear.some(([field, sheet]) => this.rig.content[field].revision !== sheet.envelope?.revision);
  }

  get #gear() {
    return [['instrument', this.instrument], ['synth', this.synth]];
  }

  async save() {
    if (this.#saving) return null;
    this.#saving = true;
    this.#isWaiting = false;
    try {
      for (const [field, sheet] of this.#gear) {
        if (sheet.isDirty) {
          sheet.reason ||= this.reason || 'At the wiring bench';
          if (!await sheet.save()) {
            this.#isWaiting = sheet.state === 'away';
            return null;
          }
        }
        // What was checked is what is kept: the rig holds the gear as it lay on the bench.
        if (sheet.envelope && this.rig.content[field].revision !== sheet.envelope.revision) {
          this.rig.content[field] = { id: sheet.id, revision: sheet.envelope.revision };
        }
      }
      return this.rig.isDirty ? await this.rig.save() : this.rig.envelope;
    } finally {
      this.#saving = false;
      for (const listener of this.#listeners) listener();
    }
  }

  /** After a conflict in one of the sheets. @param {('yours' | 'theirs')[]} choices */
  async choose(choices) {
    const saved = await this.#speaker.choose(choices);
    return saved ? this.save() : null;
  }
}
