import { inOrder, ordersAfterMove } from '/order-rules.js';
import { equal } from './expect.js';

const four = () => ({ a: { order: 1 }, b: { order: 2 }, c: { order: 3 }, d: { order: 4 } });
const moved = (entries, key, index) => {
  for (const [each, order] of Object.entries(ordersAfterMove(entries, key, index))) entries[each].order = order;
  return inOrder(entries).join('');
};

export const tests = {
  one_number_is_enough_for_a_move() {
    equal(ordersAfterMove(four(), 'd', 1), { d: 1.5 });
    equal(ordersAfterMove(four(), 'a', 2), { a: 3.5 });
  },
  every_place_can_be_reached_from_every_place() {
    for (const key of 'abcd') {
      for (let index = 0; index < 4; index++) equal(moved(four(), key, index).indexOf(key), index);
    }
  },
  the_ends_are_open() {
    equal(ordersAfterMove(four(), 'c', 0), { c: 0 });
    equal(ordersAfterMove(four(), 'b', 3), { b: 5 });
    equal(ordersAfterMove(four(), 'b', 99), { b: 5 });
    equal(ordersAfterMove(four(), 'b', -5), { b: 0 });
  },
  staying_moves_nothing() {
    for (const [index, key] of [...'abcd'].entries()) equal(ordersAfterMove(four(), key, index), {});
    equal(ordersAfterMove({ a: { order: 1 } }, 'a', 3), {});
  },
  neighbours_without_room_are_numbered_anew() {
    const entries = { a: { order: 1 }, b: { order: 1 }, c: { order: 7 } };
    equal(ordersAfterMove(entries, 'c', 1), { b: 3, c: 2 });
    equal(moved(entries, 'c', 1), 'acb');
  },
  a_thousand_moves_keep_their_order() {
    const entries = four();
    for (let count = 0; count < 1000; count++) {
      const last = inOrder(entries)[3];
      equal(moved(entries, last, 1)[1], last);
    }
    equal(new Set(Object.values(entries).map((entry) => entry.order)).size, 4);
  },
};
