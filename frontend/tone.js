/**
 * tone.js: plays notes with a plain tone of its own (Web Audio). It starts quietly and never goes above a third of full scale.
 *
 *   const player = TonePlayer();
 *   await player.play(notes, fromSeconds);   // notes as { noteNumber, velocity, on, off }, in order of their start
 *   player.seconds                           // where it is; null while it is silent
 *   player.stop(); player.loudness = 0.4;    // 0 to 1
 */
const AHEAD_SECONDS = 0.6;
const LOUDEST = 0.33;

/** Where the browser makes no sound. */
export const NO_SOUND = 'This browser cannot play sound just now. See that its loudspeaker or headphones are connected, then try again.';

export function TonePlayer({ onEnd = () => {} } = {}) {
  let context = null;
  let master = null;
  let timer = 0;
  let startedAt = 0;
  let offset = 0;
  let loudness = 0.25;
  let running = false;
  /** Counts starts and stops: what was begun before the last of them does not sound. */
  let turn = 0;

  return {
    async play(notes, from) {
      this.stop();
      const mine = turn;
      context ??= new AudioContext();
      if (context.state === 'suspended') await context.resume();
      if (mine !== turn) return;
      master = context.createGain();
      master.gain.value = loudness * LOUDEST;
      const limiter = new DynamicsCompressorNode(context, { threshold: -18, ratio: 12, attack: 0.003 });
      master.connect(limiter).connect(context.destination);
      offset = from;
      startedAt = context.currentTime + 0.08;
      running = true;
      let next = 0;
      while (next < notes.length && notes[next].off <= from) next++;
      const end = notes.reduce((most, note) => Math.max(most, note.off), 0);
      const here = master;
      timer = setInterval(() => {
        const until = context.currentTime - startedAt + offset + AHEAD_SECONDS;
        while (next < notes.length && notes[next].on < until) sound(notes[next++], here);
        if (context.currentTime - startedAt + offset > end + 0.3) {
          this.stop();
          onEnd();
        }
      }, 150);
    },
    stop() {
      clearInterval(timer);
      turn++;
      running = false;
      if (master) {
        // A short fade: stopping must not click.
        master.gain.setTargetAtTime(0, context.currentTime, 0.015);
        const gone = master;
        setTimeout(() => gone.disconnect(), 200);
        master = null;
      }
    },
    get seconds() {
      return running ? Math.max(offset, context.currentTime - startedAt + offset) : null;
    },
    get loudness() {
      return loudness;
    },
    set loudness(next) {
      loudness = Math.max(0, Math.min(1, next));
      if (master) master.gain.setTargetAtTime(loudness * LOUDEST, context.currentTime, 0.03);
    },
  };

  function sound(note, output) {
    const on = Math.max(context.currentTime, startedAt + note.on - offset);
    const off = Math.max(on + 0.03, startedAt + note.off - offset);
    const tone = new OscillatorNode(context, { type: 'triangle', frequency: 440 * 2 ** ((note.noteNumber - 69) / 12) });
    const envelope = new GainNode(context, { gain: 0 });
    const level = 0.12 + 0.38 * (note.velocity / 127) ** 1.5;
    if (note.glide) {
      const from = Math.max(on, startedAt + note.glide.from - offset);
      tone.detune.setValueAtTime(0, from);
      tone.detune.linearRampToValueAtTime(note.glide.semitones * 100, Math.max(from + 0.005, startedAt + note.glide.to - offset));
    }
    envelope.gain.setValueAtTime(0, on);
    envelope.gain.linearRampToValueAtTime(level, on + 0.012);
    envelope.gain.setValueAtTime(level, off);
    envelope.gain.linearRampToValueAtTime(0, off + 0.03);
    tone.connect(envelope).connect(output);
    tone.start(on);
    tone.stop(off + 0.05);
    tone.addEventListener('ended', () => envelope.disconnect());
  }
}
