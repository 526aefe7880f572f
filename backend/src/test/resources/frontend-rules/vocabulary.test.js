import { VocabularyEditor } from '/parts/vocabulary-editor.js';
import { inOrder, nextOrder } from '/order-rules.js';
import { choicesOf, extent, isNameOfKey, keyFor, missingInParameter, missingInSynth, move, newParameter } from '/vocabulary-rules.js';
import { equal } from './expect.js';

const three = () => ({ a: { order: 1 }, b: { order: 2 }, c: { order: 3 } });
const synth = (more = {}) => ({ title: 'Module', sensitivityScale: { min: 0, max: 50, step: 1 }, vocabulary: { straight: {}, voice: {}, effects: {} }, ...more });

export const tests = {
  a_kind_of_effect_stays_where_it_is_while_its_name_is_typed() {
    const place = document.createElement('div');
    document.body.append(place);
    const kind = (label) => ({ label, parameters: {} });
    const content = { vocabulary: { straight: {}, voice: {}, effects: { delay: kind('Delay'), reverb: kind('Reverb') } } };
    const editor = VocabularyEditor(place, { keeping: { content, change: (edit) => (edit(content), editor.update()) } });
    const names = () => [...place.querySelectorAll('h4 .editable')].map((each) => each.querySelector('input')?.value ?? each.querySelector('button').lastChild.textContent);
    place.querySelectorAll('h4 .editable button')[1].click();
    const field = place.querySelector('h4 input');
    for (const typed of ['C', 'Ch', 'Chorus']) {
      field.value = typed;
      field.dispatchEvent(new Event('input'));
    }
    equal([document.activeElement === field, names(), content.vocabulary.effects.reverb.label], [true, ['Delay', 'Chorus'], 'Chorus']);
    field.blur();
    content.vocabulary.effects.air = kind('Air');
    editor.update();
    equal(names(), ['Air', 'Chorus', 'Delay']);
    place.remove();
  },
  keys_can_be_read_and_are_not_taken_twice() {
    equal(keyFor('Low cut', {}), 'low-cut');
    equal(keyFor('Low cut', { 'low-cut': {} }), 'low-cut-2');
    equal(keyFor('Über-Höhe!', {}), 'uber-hohe');
    equal(keyFor('音', {}), 'part');
    equal(keyFor('constructor', {}), 'constructor');
    equal(['Low cut', 'Über-Höhe!', 'Cut 2', '音', 'Größe', '!', 'Höhe 音'].map(isNameOfKey), [true, true, true, false, false, false, false]);
  },
  a_move_touches_only_what_moves() {
    const parameters = three();
    move(parameters, 'c', -1);
    equal(inOrder(parameters), ['a', 'c', 'b']);
    equal([parameters.a.order, parameters.b.order], [1, 2]);
  },
  the_ends_are_reached_and_not_passed() {
    const parameters = three();
    move(parameters, 'b', -1);
    equal(inOrder(parameters), ['b', 'a', 'c']);
    move(parameters, 'b', -1);
    equal(inOrder(parameters), ['b', 'a', 'c']);
    move(parameters, 'b', 1);
    move(parameters, 'b', 1);
    equal(inOrder(parameters), ['a', 'c', 'b']);
  },
  the_next_one_comes_last() {
    equal(nextOrder(three()), 4);
    equal(nextOrder({}), 1);
  },
  what_can_be_set_is_told_in_a_line() {
    equal(extent({ type: 'range', min: -10, max: 10, unit: 'dB' }), '−10 to 10 dB');
    equal(extent({ type: 'choice', choices: ['dark', 'bright'] }), 'dark, bright');
    equal(extent({ type: 'time', minMillis: 1, maxMillis: 2000 }), '1 to 2000 ms, or a note value');
    equal(extent({ type: 'switch' }), 'on or off');
  },
  words_to_choose_from_are_taken_apart() {
    equal(choicesOf(' dark, plain ,, bright,dark'), ['dark', 'plain', 'bright']);
    equal(choicesOf(' , '), []);
  },
  every_new_parameter_can_be_kept() {
    for (const type of ['range', 'choice', 'switch', 'time']) equal(missingInParameter(newParameter(type, 'Level', 1)), null);
  },
  what_cannot_be_kept_says_why() {
    equal(missingInParameter({ type: 'range', label: 'Level', min: 5, max: 5, step: 1 }), 'Level: the most must be above the least.');
    equal(missingInParameter({ type: 'range', label: 'Level', min: 0, max: 1, step: 2 }), 'Level: the step is wider than the range.');
    equal(missingInParameter({ type: 'choice', label: 'Tone', choices: [] }), 'Tone: give at least one word to choose.');
    equal(missingInParameter({ type: 'time', label: 'Time', minMillis: 5, maxMillis: 4 }), 'Time: the longest time is shorter than the shortest.');
  },
  a_synth_is_looked_through_to_its_bands() {
    equal(missingInSynth(synth()), null);
    equal(missingInSynth(synth({ title: ' ' })), 'Give the synth a name first.');
    const line = (band) => synth({ controlLines: { v: { label: 'Volume', minVolts: 0, maxVolts: 5, bands: [band] } } });
    equal(missingInSynth(line({ fromVolts: 0, toVolts: 5, meaning: 'full' })), null);
    equal(missingInSynth(line({ fromVolts: 0, toVolts: 5.1, meaning: 'full' })), 'Volume: the band “full” leaves the line\'s range.');
    equal(missingInSynth(line({ fromVolts: 2, toVolts: 2, meaning: 'full' })), 'Volume: the band “full” must end above where it begins.');
  },
};
