/**
 * hold.js: a button that acts again and again while it is held, by finger, mouse, Space or Enter.
 *
 *   repeatWhileHeld(button, () => step(+1), { onRelease: () => { … } });
 *
 * A screen reader's or a script's plain click acts once. onRelease comes once after every press.
 */
import { pauseWhileHeld } from './stepper-rules.js';

/** @param {HTMLButtonElement} button @param {() => void} act @param {{ onRelease?: () => void }} [after] */
export function repeatWhileHeld(button, act, { onRelease = () => {} } = {}) {
  let timer = 0;
  let held = false;
  let pressed = false;

  button.addEventListener('pointerdown', (event) => {
    if (event.button !== 0) return;
    pressed = true;
    press();
  });
  for (const end of ['pointerup', 'pointercancel', 'pointerleave', 'blur']) button.addEventListener(end, release);
  button.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    if (!event.repeat) press();
  });
  button.addEventListener('keyup', (event) => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    release();
  });
  button.addEventListener('click', () => {
    // The press that came before has acted already.
    if (!pressed) {
      act();
      onRelease();
    }
    pressed = false;
  });
  // Holding long must not open the phone's menu.
  button.addEventListener('contextmenu', (event) => event.preventDefault());

  function press() {
    if (held || button.disabled) return;
    held = true;
    act();
    wait(0);
  }

  function wait(repeats) {
    timer = setTimeout(() => {
      if (!held || button.disabled) return;
      act();
      wait(repeats + 1);
    }, pauseWhileHeld(repeats));
  }

  function release() {
    clearTimeout(timer);
    if (!held) return;
    held = false;
    onRelease();
  }
}
