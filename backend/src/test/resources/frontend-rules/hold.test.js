import { el } from '/dom.js';
import { repeatWhileHeld } from '/parts/hold.js';
import { equal } from './expect.js';

/** A button that counts what it did, and what happens to it. */
function counting() {
  let steps = 0;
  let releases = 0;
  let waiting = null;
  const button = el('button', { type: 'button' }, '+');
  repeatWhileHeld(button, () => { steps += 1; }, {
    onRelease: () => { releases += 1; },
    start: (next) => { waiting = next; return 1; },
    stop: () => { waiting = null; },
  });
  /** The clock runs to whatever waits next; false if nothing does. */
  const pass = () => {
    const next = waiting;
    waiting = null;
    next?.();
    return next !== null;
  };
  const pointer = (type, pointerType) => button.dispatchEvent(new PointerEvent(type, { pointerType, button: 0, bubbles: true }));
  const key = (type, repeat = false) => button.dispatchEvent(new KeyboardEvent(type, { key: ' ', repeat, cancelable: true, bubbles: true }));
  return { button, pointer, key, pass, steps: () => steps, releases: () => releases };
}

export const tests = {
  a_mouse_acts_when_it_is_pressed() {
    const { pointer, steps, releases } = counting();
    pointer('pointerdown', 'mouse');
    equal(steps(), 1);
    pointer('pointerup', 'mouse');
    equal([steps(), releases()], [1, 1]);
  },
  a_finger_acts_when_it_is_lifted() {
    const { pointer, steps, releases } = counting();
    pointer('pointerdown', 'touch');
    equal(steps(), 0);
    pointer('pointerup', 'touch');
    equal([steps(), releases()], [1, 1]);
  },
  a_finger_that_scrolls_changes_nothing() {
    const { pointer, steps } = counting();
    pointer('pointerdown', 'touch');
    pointer('pointercancel', 'touch');
    equal(steps(), 0);
  },
  the_click_after_a_press_does_not_count_twice() {
    const { button, pointer, steps } = counting();
    pointer('pointerdown', 'mouse');
    pointer('pointerup', 'mouse');
    button.dispatchEvent(new MouseEvent('click', { detail: 1 }));
    equal(steps(), 1);
  },
  a_screen_readers_click_acts_once() {
    const { button, steps, releases } = counting();
    button.click();
    equal([steps(), releases()], [1, 1]);
  },
  a_held_key_does_not_add_the_systems_repeats_to_ours() {
    const { key, steps } = counting();
    key('keydown');
    key('keydown', true);
    key('keydown', true);
    key('keyup');
    equal(steps(), 1);
  },
  holding_repeats_until_it_is_let_go() {
    const { pointer, steps, pass } = counting();
    pointer('pointerdown', 'touch');
    pass();
    pass();
    pass();
    equal(steps(), 3);
    pointer('pointerup', 'touch');
    equal(steps(), 3);
    equal(pass(), false);
    equal(steps(), 3);
  },
};
