/**
 * sound-editor.js: a sound as one reads it through: slot and notes, straight sound, voices, the chain of effects in order.
 *
 *   const editor = SoundEditor(element, sound);
 *   editor.update();                            // after the settings changed
 *
 * sound {
 *   settings()          the whole settings, resolved
 *   refresh()           the sheet was changed: resolve again
 *   value(pointer)      one place of them
 *   edit(change)        hands the whole settings to `change` to be altered in place
 *   own(pointer)        true: this piece says so; false: the starting point does; null: it follows none
 *   ownWithin(pointer)  whether this piece says anything within a place
 *   start()             the starting point's settings, or undefined
 *   startName()         such as "Everyday 3"
 *   giveBack(pointer)   the starting point's value holds again
 *   leftOut()           pointers to the starting point's voices and effects that this piece leaves out
 *   vocabulary, hasVocabulary, bpm(), readOnly
 * }
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { inOrder, ordersAfterMove } from '../order-rules.js';
import { escaped } from '../recipe-rules.js';
import { read } from '../save-rules.js';
import { AddLayer } from './add-layer.js';
import { Editable } from './editable.js';
import { MovableList } from './movable-list.js';
import { Origin } from './setting.js';
import { Settings } from './settings.js';
import { SoundLayer } from './sound-layer.js';

/** @param {HTMLElement} element @param {any} sound */
export function SoundEditor(element, sound) {
  element.classList.add('sound-editor');
  const rest = Rest(section());
  const straight = StraightSound(section('Straight sound'));
  const voices = Layers(section('Voices'), 'voices');
  const effects = Layers(section('Effects, in order'), 'effects');
  return {
    update() {
      sound.refresh();
      for (const each of [rest, straight, voices, effects]) each.update();
    },
  };

  function section(title) {
    const place = el('section', {}, title ? el('h2', {}, title) : null);
    element.append(place);
    return place;
  }

  function StraightSound(place) {
    const tick = el('span');
    const from = el('span', { class: 'origin' });
    const list = el('div');
    place.append(el('div', { class: 'layer straight' }, el('div', { class: 'layer-head' }, tick, from), list));
    const on = Editable(tick, { label: 'on', kind: 'tick', value: true, readOnly: sound.readOnly, onEdit: (value) => sound.edit((settings) => { settings.straight.on = value; }) });
    const origin = Origin(from, sound, { pointer: '/straight/on', label: 'Straight sound', words: (value) => (value ? 'on' : 'off') });
    const settings = Settings(list, sound, { pointer: '/straight', parameters: () => sound.vocabulary.straight, name: () => 'straight sound' });
    const update = () => {
      on.show({ value: sound.value('/straight/on') !== false, about: 'straight sound' });
      origin.update();
      settings.update();
    };
    update();
    return { update };
  }

  function Layers(place, group) {
    const list = el('ol', { class: 'layers' });
    const none = el('p', { class: 'pencil' }, group === 'voices' ? 'No voice: the straight sound alone.' : 'No effect in the chain.');
    const gone = el('ul', { class: 'gone' });
    place.append(list, none, gone);
    if (!sound.readOnly) {
      MovableList(list, { onMove: move });
      place.append(AddLayer(group, sound));
    }
    update();
    return { update };

    function update() {
      const keys = inOrder(sound.settings()[group]);
      none.hidden = keys.length > 0;
      keyedList(list, keys, (key) => key, (key) => SoundLayer(el('li', { 'data-key': key }), sound, { group, key }), (layer) => layer.update());
      fill(gone, sound.leftOut().filter((pointer) => pointer.startsWith(`/${group}/`)).map((pointer) => el('li', {},
        el('span', { class: 'pencil' }, nameOf(read(sound.start(), pointer))), ' ', el('span', { class: 'origin' },
          el('span', { class: 'here' }, 'left out in this piece'),
          sound.readOnly ? null : el('button', { type: 'button', class: 'quiet give-back', on: { click: () => sound.giveBack(pointer) } }, 'take it back in')))));
    }

    function move(key, index) {
      sound.edit((settings) => {
        for (const [each, order] of Object.entries(ordersAfterMove(settings[group], key, index))) settings[group][each].order = order;
      });
    }

    function nameOf(layer) {
      return layer?.name ?? sound.vocabulary.effects[layer?.type]?.label ?? layer?.type ?? '';
    }
  }

  function Rest(place) {
    const list = el('dl', { class: 'facts' });
    place.append(list);
    const rows = [
      row('slot', 'Slot', { kind: 'line', maxLength: 30, empty: 'in no slot yet' }),
      row('notes', 'Notes', { kind: 'long', empty: 'add a note' }),
    ];
    const update = () => rows.forEach((each) => each());
    update();
    return { update };

    function row(field, label, shape) {
      const value = el('span', { class: `${field}-value` });
      const from = el('span', { class: 'origin' });
      list.append(el('dt', {}, label), el('dd', {}, value, ' ', from));
      const pointer = `/${escaped(field)}`;
      const editable = Editable(value, { label, ...shape, value: '', readOnly: sound.readOnly, onEdit: (next) => sound.edit((settings) => { settings[field] = next; }) });
      const origin = Origin(from, sound, { pointer, label, words: (before) => (before.length > 24 ? `“${before.slice(0, 22)}…”` : before) });
      return () => {
        editable.show({ value: sound.value(pointer) ?? '' });
        origin.update();
      };
    }
  }
}
