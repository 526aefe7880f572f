/**
 * hold.js: a button that acts again and again while it is held, by finger, mouse, Space or Enter.
 *
 *   repeatWhileHeld(button, () => step(+1), { onRelease: () => { … } });
 *
 * A screen reader's or a script's plain click acts once. onRelease comes once after every press.
 */
import { pauseWhileHeld } from './stepper-rules.js';

/**
 * @param {HTMLButtonElement} button
 * @param {() => void} act
 * @param {{ onRelease?: () => void, start?: (act: () => void, millis: number) => number, stop?: (timer: number) => void }} [around]
 *   start, stop: the clock
 */
export function repeatWhileHeld(button, act, { onRelease = () => {}, start = (next, millis) => setTimeout(next, millis), stop = (timer) => clearTimeout(timer) } = {}) {
  let timer = 0;
  let held = false;
  let acted = false;

  button.addEventListener('pointerdown', (event) => {
    // A finger may be about to scroll: it acts when it is lifted or has stayed, not when it lands.
    if (event.button === 0) press(event.pointerType !== 'touch');
  });
  button.addEventListener('pointerup', () => {
    if (held && !acted) once();
    release();
  });
  for (const end of ['pointercancel', 'pointerleave', 'blur']) button.addEventListener(end, release);
  button.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    if (!event.repeat) press(true);
  });
  button.addEventListener('keyup', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    release();
  });
  button.addEventListener('click', (event) => {
    // A click that came from a pointer has acted already; one from a screen reader or a script has no count.
    if (event.detail !== 0 || button.disabled) return;
    act();
    onRelease();
  });
  // Holding long must not open the phone's menu.
  button.addEventListener('contextmenu', (event) => event.preventDefault());

  function press(atOnce) {
    if (held || button.disabled) return;
    held = true;
    acted = false;
    if (atOnce) once();
    wait(0);
  }

  function once() {
    acted = true;
    act();
  }

  function wait(repeats) {
    timer = start(() => {
      if (!held || button.disabled) return;
      once();
      wait(repeats + 1);
    }, pauseWhileHeld(repeats));
  }

  function release() {
    stop(timer);
    if (!held) return;
    held = false;
    onRelease();
  }
}
