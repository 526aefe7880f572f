import { SureButton } from '/parts/sure-button.js';
import { equal } from './expect.js';

export const tests = {
  a_double_click_asks_and_the_next_click_answers() {
    let thrown = 0;
    const button = SureButton({ word: 'Throw away', question: 'Really throw away?', trouble: document.createElement('p'), act: async () => { thrown += 1; } });
    const click = (detail) => button.dispatchEvent(new MouseEvent('click', { detail }));
    click(1);
    click(2);
    equal([thrown, button.textContent], [0, 'Really throw away?']);
    click(1);
    equal(thrown, 1);
  },
};
