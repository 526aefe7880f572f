import { Editable } from '/parts/editable.js';
import { SynthForm, blankSynth } from '/parts/synth-form.js';
import { equal } from './expect.js';

/** A value on the page, and what was handed on of it. */
function drawn(state) {
  const element = document.createElement('div');
  document.body.append(element);
  const handedOn = [];
  const editable = Editable(element, { ...state, onEdit: (value) => {
    handedOn.push(value);
    editable.show({ value });
  } });
  return { element, handedOn, editable };
}

/** Types letter by letter. @param {HTMLElement} element */
function type(element, words) {
  element.querySelector('button.value').click();
  const field = element.querySelector('input');
  for (let length = 0; length <= words.length; length++) {
    field.value = words.slice(0, length);
    field.dispatchEvent(new Event('input'));
  }
  return field;
}

export const tests = {
  a_value_that_is_not_among_the_choices_stands_there_and_the_first_can_be_chosen() {
    const choices = [['6', 'pin 6'], ['7', 'pin 7']];
    for (const [value, words] of [['9', '9'], [null, 'none chosen']]) {
      const { element, handedOn } = drawn({ label: 'Fed from', kind: 'choice', choices, empty: 'none chosen', value });
      element.querySelector('button.value').click();
      const field = element.querySelector('select');
      equal([...field.options].map(({ text }) => text), [words, 'pin 6', 'pin 7']);
      equal(field.selectedOptions[0].text, words);
      field.value = '6';
      field.dispatchEvent(new Event('input'));
      equal(handedOn, ['6']);
      element.remove();
    }
  },
  half_a_number_is_not_kept_when_the_whole_is_refused() {
    const { element, handedOn } = drawn({ label: 'Supply', kind: 'number', unit: 'V', max: 60, value: 9 });
    type(element, '70').dispatchEvent(new Event('blur'));
    equal(handedOn.at(-1), 9);
    equal(element.querySelector('button').textContent, 'Supply: 9V');
    equal(element.querySelector('[role=status]').textContent, '“70” was not taken. 60 V is the most.');
    type(element, '12').dispatchEvent(new Event('blur'));
    equal([handedOn.at(-1), element.querySelector('[role=status]')], [12, null]);
    element.remove();
  },
  enter_leaves_a_refused_field_like_any_other_way_and_escape_without_a_word() {
    const { element, handedOn } = drawn({ label: 'Tempo', kind: 'number', max: 400, value: 108 });
    type(element, '1200').dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter' }));
    equal([handedOn.at(-1), element.querySelector('[role=status]').textContent], [108, '“1200” was not taken. 400 is the most.']);
    type(element, '1200').dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape' }));
    equal([handedOn.at(-1), element.querySelector('[role=status]')], [108, null]);
    element.remove();
  },
  a_field_that_was_emptied_against_the_rules_says_so() {
    const { element, handedOn } = drawn({ label: 'Day', kind: 'line', value: 'x', check: (value) => (value ? null : 'A day is needed.') });
    type(element, '').dispatchEvent(new Event('blur'));
    equal([handedOn, element.querySelector('[role=status]').textContent], [[], 'A day is needed.']);
    element.remove();
  },
  typing_one_memory_slot_leaves_the_letters_and_the_other_number_alone() {
    const content = { ...blankSynth(), memorySlots: { prefix: 'U', first: 1, last: 500 } };
    const listeners = [];
    const keeping = { content, onChange: (listener) => listeners.push(listener), change(edit) {
      edit(content);
      for (const listener of listeners) listener();
    } };
    const leaf = document.createElement('div');
    document.body.append(leaf);
    SynthForm(leaf, { keeping, shapes: [] });
    const first = [...leaf.querySelectorAll('.memory dd')][1];
    type(first, '0').dispatchEvent(new Event('blur'));
    equal(content.memorySlots, { prefix: 'U', first: 0, last: 500 });
    type(first, '').dispatchEvent(new Event('blur'));
    equal(content.memorySlots, undefined);
    leaf.remove();
  },
};
