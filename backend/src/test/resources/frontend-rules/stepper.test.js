import { Stepper } from '/parts/stepper.js';
import { pauseWhileHeld, stepped, within } from '/parts/stepper-rules.js';
import { equal } from './expect.js';

const SCALE = { min: 0, max: 50, step: 1, customaryStart: 22 };

/** A stepper on the page at 20, its field, and what was handed on. */
function drawn() {
  const element = document.createElement('span');
  document.body.append(element);
  const handedOn = [];
  Stepper(element, { label: 'Sensitivity', value: 20, scale: SCALE, onStep: (value) => handedOn.push(value) });
  return { element, field: element.querySelector('input'), handedOn };
}

export const tests = {
  what_is_no_number_is_said_and_half_of_it_is_not_kept() {
    const { element, field, handedOn } = drawn();
    field.focus();
    for (const typed of ['3', '3o']) {
      field.value = typed;
      field.dispatchEvent(new Event('input'));
    }
    field.dispatchEvent(new Event('change'));
    equal([handedOn, field.value, element.querySelector('[role=status]').textContent], [[3, 20], '20', '“3o” was not taken: write a number.']);
    element.remove();
  },
  keys_that_move_the_cursor_leave_the_value_alone() {
    const { element, field, handedOn } = drawn();
    for (const key of ['Home', 'End']) field.dispatchEvent(new KeyboardEvent('keydown', { key, ctrlKey: true }));
    equal([handedOn, field.value], [[], '20']);
    element.remove();
  },
  a_step_goes_one_mark_up_or_down() {
    equal(stepped(20, SCALE, 1), 21);
    equal(stepped(20, SCALE, -1), 19);
    equal(stepped(20, SCALE, 10), 30);
  },
  a_value_that_is_not_set_begins_where_players_start() {
    equal(stepped(null, SCALE, 1), 22);
    equal(stepped(null, SCALE, -1), 22);
    equal(stepped(null, { min: 5, max: 9, step: 1 }, 1), 5);
  },
  the_scale_ends_where_it_ends() {
    equal(stepped(49, SCALE, 1), 50);
    equal(stepped(50, SCALE, 1), 50);
    equal(stepped(1, SCALE, -1), 0);
    equal(stepped(0, SCALE, -1), 0);
    equal(within(51, SCALE), 50);
    equal(within(-1, SCALE), 0);
  },
  tenths_stay_tenths() {
    const tenths = { min: 0, max: 1, step: 0.1 };
    let value = 0;
    for (let count = 0; count < 7; count++) value = stepped(value, tenths, 1);
    equal(value, 0.7);
  },
  a_value_between_two_marks_goes_to_the_nearer_end_of_the_step() {
    equal(stepped(20.4, SCALE, 1), 21);
    equal(stepped(20.4, SCALE, -1), 20);
  },
  a_step_up_and_down_again_is_where_it_was() {
    for (let value = 1; value < 50; value++) equal(stepped(stepped(value, SCALE, 1), SCALE, -1), value);
  },
  holding_grows_quicker() {
    equal(pauseWhileHeld(0) > pauseWhileHeld(1), true);
    equal(pauseWhileHeld(1) > pauseWhileHeld(8), true);
  },
};
