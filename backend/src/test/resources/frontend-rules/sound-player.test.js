import { Click } from '/click.js';
import { TakePlayer } from '/parts/take-player.js';
import { TonePlayer } from '/tone.js';
import { equal } from './expect.js';
import { settled } from './notebook.js';

/**
 * A browser whose sound wakes only when told.
 *
 * @param {(sound: { wake: () => Promise<void>, refuse: () => Promise<void>, ticking: Set<number>, frames: Set<number> }) => Promise<void>} work
 *   ticking: intervals that run; frames: pictures that are waited for
 */
async function withSound(work) {
  const replaced = ['AudioContext', 'DynamicsCompressorNode', 'setInterval', 'clearInterval', 'requestAnimationFrame', 'cancelAnimationFrame'];
  const originals = replaced.map((name) => globalThis[name]);
  const waiting = [];
  const ticking = new Set();
  const frames = new Set();
  let last = 0;
  const begun = (running) => () => (running.add(++last), last);
  const answered = (which) => async () => {
    for (const each of waiting.splice(0)) each[which]();
    await settled();
  };
  const nodes = { gain: { setTargetAtTime() {} }, connect: (next) => next, disconnect() {} };
  globalThis.AudioContext = class {
    state = 'suspended';
    currentTime = 0;
    resume() {
      return new Promise((wake, refuse) => { waiting.push({ wake, refuse }); });
    }
    createGain() {
      return nodes;
    }
  };
  globalThis.DynamicsCompressorNode = class {
    connect(next) {
      return next;
    }
  };
  globalThis.setInterval = begun(ticking);
  globalThis.clearInterval = (id) => ticking.delete(id);
  globalThis.requestAnimationFrame = begun(frames);
  globalThis.cancelAnimationFrame = (id) => frames.delete(id);
  try {
    await work({ wake: answered('wake'), refuse: answered('refuse'), ticking, frames });
  } finally {
    replaced.forEach((name, index) => { globalThis[name] = originals[index]; });
  }
}

export const tests = {
  async a_click_that_is_started_twice_ticks_once_and_stops() {
    await withSound(async ({ wake, ticking }) => {
      const click = Click({ onBeat() {} });
      click.start(60, 4, 100);
      click.start(60, 4, 100);
      await wake();
      equal(ticking.size, 1);
      click.stop();
      equal(ticking.size, 0);
      click.start(60, 4, 100);
      click.stop();
      await wake();
      equal(ticking.size, 0);
    });
  },
  async a_tone_that_is_started_twice_plays_once_and_stops() {
    await withSound(async ({ wake, ticking }) => {
      const player = TonePlayer();
      player.play([], 0);
      player.play([], 0);
      await wake();
      equal(ticking.size, 1);
      player.stop();
      player.play([], 0);
      player.stop();
      await wake();
      equal([ticking.size, player.seconds], [0, null]);
    });
  },
  async a_take_is_played_once_it_is_there_and_followed_once_however_often_one_seeks() {
    await withSound(async ({ wake, refuse, frames }) => {
      const element = document.createElement('div');
      const player = TakePlayer(element, { roll: { playAt() {} } });
      const [before, after] = element.querySelectorAll('button');
      equal([before.disabled, after.disabled], [true, true]);
      player.show({ before: [], after: [] });
      equal([before.disabled, after.disabled], [false, false]);
      before.click();
      await refuse();
      equal([before.textContent, element.querySelector('[role="status"]').textContent.includes('cannot play sound')], ['Play as it came', true]);
      before.click();
      await wake();
      for (const seconds of [1, 2]) {
        player.seek(seconds);
        await wake();
      }
      equal([before.textContent, frames.size], ['Stop', 1]);
      before.click();
    });
  },
};
