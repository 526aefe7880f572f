import { el, fill } from '/dom.js';
import { keyedList } from '/keyed-list.js';
import { equal, fails } from './expect.js';

const HOSTILE = '<img src=x onerror="window.hurt=1"><script>window.hurt=1</script>';

export const tests = {
  a_players_words_are_text() {
    const element = el('p', { title: HOSTILE }, HOSTILE);
    equal(element.children.length, 0);
    equal(element.textContent, HOSTILE);
    equal(fill(element, HOSTILE).children.length, 0);
  },
  no_attribute_carries_a_script() {
    fails(() => el('a', { onclick: 'alert(1)' }), 'listeners go under');
    fails(() => el('a', { href: 'javascript:alert(1)' }), 'leaves this notebook');
    fails(() => el('a', { href: '//elsewhere.example' }), 'leaves this notebook');
    fails(() => el('a', { href: 'https://elsewhere.example' }), 'leaves this notebook');
    fails(() => el('p', { style: 'color:red' }), 'style');
  },
  what_is_absent_is_left_off() {
    const element = el('p', { id: null, hidden: false, 'aria-busy': undefined, tabindex: 0 }, null, false, undefined, 0, ['a', ['b']]);
    equal(element.outerHTML, '<p tabindex="0">0ab</p>');
  },
  a_list_drawn_again_keeps_its_rows() {
    const list = el('ul');
    const draw = (keys) => keyedList(list, keys, (key) => key, (key) => el('li', {}, key));
    draw(['a', 'b', 'c']);
    const [, second] = list.children;
    draw(['b', 'd', 'a']);
    equal(list.textContent, 'bda');
    equal(list.firstChild === second, true);
  },
  a_focused_row_keeps_its_focus_while_others_come_and_go() {
    const list = el('ul');
    document.body.append(list);
    const draw = (keys) => keyedList(list, keys, (key) => key, (key) => el('li', {}, el('input', { 'aria-label': key })));
    draw(['a', 'b']);
    list.children[1].firstChild.focus();
    draw(['c', 'b']);
    equal(document.activeElement.getAttribute('aria-label'), 'b');
    draw(['b', 'c']);
    equal(document.activeElement.getAttribute('aria-label'), 'b');
    draw(['c', 'b']);
    equal(document.activeElement.getAttribute('aria-label'), 'b');
    list.remove();
  },
  who_was_in_a_row_that_is_gone_comes_to_the_one_in_its_place_and_at_last_to_the_list() {
    const list = el('ul');
    document.body.append(list);
    const draw = (keys) => keyedList(list, keys, (key) => key, (key) => el('li', {}, el('input', { 'aria-label': `name ${key}` }), el('button', { 'aria-label': key })));
    const focused = () => document.activeElement.getAttribute('aria-label') ?? document.activeElement.localName;
    draw(['a', 'b', 'c']);
    list.children[1].firstChild.focus();
    draw(['a', 'c']);
    equal(focused(), 'c');
    draw(['a']);
    equal(focused(), 'a');
    draw([]);
    equal(focused(), 'ul');
    list.remove();
  },
  two_rows_cannot_share_a_key() {
    fails(() => keyedList(el('ul'), ['a', 'a'], (key) => key, () => el('li')), 'two items have the key "a"');
  },
};
