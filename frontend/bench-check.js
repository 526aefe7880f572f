/**
 * bench-check.js: asks the server about the wiring on the bench after every change, one question at a time.
 *
 *   const check = BenchCheck({ bench, onAnswer: () => draw(check) });
 *   check.look();                       // after a change; asks only if something it depends on differs
 *   check.sheet, check.missing          // the newest answer or null; why there is none, a sentence or null
 *   check.isAsking                      // whether the newest change is still being looked at
 *   check.hasFailed, check.again()      // whether the server could not be asked; asks it once more
 */
import { post } from './api.js';
import { same } from './drafts-rules.js';
import { instrumentSide, missingForBench, synthSide } from './wiring-rules.js';
import { wholeRoutes } from './parts/route-rules.js';

const PAUSE_MILLIS = 250;

/** @param {{ bench: import('./bench-keeping.js').BenchKeeping, onAnswer: () => void }} state */
export function BenchCheck({ bench, onAnswer }) {
  const check = { sheet: null, missing: null, isAsking: false, hasFailed: false, look, again };
  let asked = null;
  let timer = 0;
  return check;

  function look() {
    const [rig, instrument, synth] = [bench.rig.content, bench.instrument.content, bench.synth.content];
    check.missing = missingForBench(instrument, synth);
    check.hasFailed = false;
    if (check.missing) {
      check.sheet = null;
      asked = null;
      check.isAsking = false;
      clearTimeout(timer);
      return;
    }
    const request = {
      instrument: instrumentSide(instrument),
      synth: synthSide(synth),
      adapter: wholeRoutes(rig.adapter),
      readings: rig.readings ?? {},
    };
    if (same(request, asked)) return;
    const isFirst = !asked;
    asked = structuredClone(request);
    check.isAsking = true;
    clearTimeout(timer);
    timer = setTimeout(() => ask(asked), isFirst ? 0 : PAUSE_MILLIS);
  }

  function again() {
    look();
    onAnswer();
  }

  async function ask(request) {
    try {
      const answer = await post('/api/bench/wiring', request);
      if (!same(request, asked)) return;
      check.sheet = answer;
    } catch (failure) {
      if (!same(request, asked)) return;
      asked = null;
      check.sheet = null;
      check.missing = failure.message;
      check.hasFailed = true;
    }
    check.isAsking = false;
    onAnswer();
  }
}
