/**
 * click.js: a soft click on every beat (Web Audio), with where it is.
 *
 *   const click = Click({ onBeat: (beat) => … });   // fractions of a beat, many times a second; null when it stops
 *   await click.start(60, 4, 120);                  // beats a minute, counted-in beats (higher), beats in all
 *   click.stop();
 */
const AHEAD_SECONDS = 0.3;
const QUIET = 0.1;

export function Click({ onBeat }) {
  let context = null;
  let timer = 0;
  let startedAt = 0;
  let perBeat = 1;
  /** Counts starts and stops: what was begun before the last of them goes on no more. */
  let turn = 0;

  return {
    async start(bpm, countInBeats, beats) {
      const mine = ++turn;
      clearInterval(timer);
      context ??= new AudioContext();
      if (context.state === 'suspended') await context.resume();
      if (mine !== turn) return;
      perBeat = 60 / bpm;
      startedAt = context.currentTime + 0.15;
      let next = 0;
      timer = setInterval(() => {
        while (next < beats && startedAt + next * perBeat < context.currentTime + AHEAD_SECONDS) {
          tick(startedAt + next * perBeat, next < countInBeats);
          next++;
        }
        if (context.currentTime > startedAt + beats * perBeat) this.stop();
      }, 80);
      follow(mine);
    },
    stop() {
      clearInterval(timer);
      turn++;
      onBeat(null);
    },
  };

  function follow(mine) {
    if (mine !== turn) return;
    onBeat(Math.max(0, (context.currentTime - startedAt) / perBeat));
    requestAnimationFrame(() => follow(mine));
  }

  function tick(at, isCountIn) {
    const tone = new OscillatorNode(context, { type: 'sine', frequency: isCountIn ? 1320 : 880 });
    const envelope = new GainNode(context, { gain: 0 });
    envelope.gain.setValueAtTime(QUIET, at);
    envelope.gain.exponentialRampToValueAtTime(0.001, at + 0.06);
    tone.connect(envelope).connect(context.destination);
    tone.start(at);
    tone.stop(at + 0.07);
  }
}
