/**
 * vocabulary-editor.js: everything a synth lets the player set, in the synth's own words. Recipes offer what stands here.
 *
 *   const vocabulary = VocabularyEditor(element, { keeping });
 *   vocabulary.update();
 */
import { el, fill } from '../dom.js';
import { same } from '../drafts-rules.js';
import { keyedList } from '../keyed-list.js';
import { keyFor } from '../vocabulary-rules.js';
import { AddByName } from './add-by-name.js';
import { Editable } from './editable.js';
import { ParametersEditor } from './parameters-editor.js';

/** @param {HTMLElement} element @param {{ keeping: import('../save.js').Keeping }} state */
export function VocabularyEditor(element, { keeping }) {
  const straight = el('div');
  const voice = el('div');
  const effects = el('div');
  fill(element,
    el('h3', {}, 'Straight sound'), straight,
    el('h3', {}, 'Each voice'), voice,
    el('h3', {}, 'Effects'), effects,
    AddByName({ label: 'A kind of effect: delay, reverb, …', onAdd: (label) => edit((vocabulary) => { vocabulary.effects[keyFor(label, vocabulary.effects)] = { label, parameters: {} }; }) }));
  /** Keys of the kinds as they stand on the page: a name that is being typed moves nothing. @type {string[]} */
  let drawn = [];
  const groups = [
    ParametersEditor(straight, { read: () => read().straight, edit: (change) => edit((vocabulary) => change(vocabulary.straight)) }),
    ParametersEditor(voice, { read: () => read().voice, edit: (change) => edit((vocabulary) => change(vocabulary.voice)) }),
  ];
  update();
  return { update };

  function read() {
    return { straight: {}, voice: {}, effects: {}, ...keeping.content.vocabulary };
  }

  function edit(change) {
    keeping.change((content) => {
      content.vocabulary = read();
      change(content.vocabulary);
    });
  }

  function update() {
    for (const group of groups) group.update();
    const kinds = Object.keys(read().effects);
    if (!same([...kinds].sort(), [...drawn].sort())) drawn = kinds.sort((one, other) => read().effects[one].label.localeCompare(read().effects[other].label));
    keyedList(effects, drawn, (key) => key, EffectKind, (kind) => kind.update());
  }

  function EffectKind(key) {
    const place = el('div');
    const name = Editable(el('span'), {
      label: 'Kind of effect', value: read().effects[key].label, maxLength: 80, check: (value) => (value.trim() ? null : 'It needs a name.'),
      onEdit: (label) => edit((vocabulary) => { vocabulary.effects[key].label = label; }),
    });
    const which = el('span', { class: 'unseen' }, ` ${read().effects[key].label}`);
    const element = el('section', { class: 'effect-kind' },
      el('h4', {}, name.element, el('button', { type: 'button', class: 'quiet', on: { click: () => edit((vocabulary) => { delete vocabulary.effects[key]; }) } }, 'take out', which)),
      place);
    const group = ParametersEditor(place, { read: () => read().effects[key].parameters, edit: (change) => edit((vocabulary) => change(vocabulary.effects[key].parameters)) });
    return {
      element,
      update() {
        name.show({ value: read().effects[key].label });
        which.textContent = ` ${read().effects[key].label}`;
        group.update();
      },
    };
  }
}
