/**
 * take-player.js: plays a take as it came or as it was played, with a plain tone.
 *
 *   const player = TakePlayer(element, { roll });   // roll: parts/piano-roll.js
 *   player.show(report);  player.seek(12.5);
 */
import { el, fill } from '../dom.js';
import { NO_SOUND, TonePlayer } from '../tone.js';

/** @param {HTMLElement} element @param {{ roll: any }} state */
export function TakePlayer(element, { roll }) {
  const tone = TonePlayer({ onEnd: () => halt() });
  let report = null;
  let which = '';
  let start = 0;
  let frame = 0;
  const before = el('button', { type: 'button', disabled: true, on: { click: () => press('before') } });
  const after = el('button', { type: 'button', disabled: true, on: { click: () => press('after') } });
  const loudness = el('input', { type: 'range', id: 'loudness', min: 0, max: 1, step: 0.05, value: tone.loudness, on: { input: (event) => { tone.loudness = Number(event.target.value); } } });
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  element.classList.add('take-player');
  fill(element,
    el('div', { class: 'buttons' }, before, after, el('label', { class: 'loudness', for: 'loudness' }, 'Loudness ', loudness)),
    el('p', { class: 'help' }, 'A plain tone, which begins quietly. Turn headphones and amplifier down before you play it; press in the roll to start elsewhere.'),
    trouble);
  label();
  addEventListener('pagehide', () => tone.stop());
  return {
    show(next) {
      report = next;
      before.disabled = after.disabled = false;
    },
    /** Plays on from there, or from there when started. */
    seek(seconds) {
      start = seconds;
      roll.playAt(seconds);
      if (which) begin(which);
    },
  };

  function press(wanted) {
    if (which === wanted) {
      halt();
      return;
    }
    if (tone.seconds !== null) start = tone.seconds;
    begin(wanted);
  }

  async function begin(wanted) {
    which = wanted;
    label();
    trouble.textContent = '';
    try {
      await tone.play(report[wanted], start);
    } catch {
      halt();
      trouble.textContent = NO_SOUND;
    }
    follow();
  }

  function halt() {
    start = tone.seconds ?? 0;
    tone.stop();
    which = '';
    label();
  }

  /** Once for each picture, however often it was begun. */
  function follow() {
    cancelAnimationFrame(frame);
    if (!which || tone.seconds === null) return;
    roll.playAt(tone.seconds);
    frame = requestAnimationFrame(follow);
  }

  function label() {
    before.textContent = which === 'before' ? 'Stop' : 'Play as it came';
    after.textContent = which === 'after' ? 'Stop' : 'Play mended';
  }
}
