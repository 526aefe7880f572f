/**
 * add-layer.js: the door to one more voice or effect, at the end of its list.
 *
 *   place.append(AddLayer('voices', sound));
 */
import { el, fill } from '../dom.js';
import { nextOrder } from '../order-rules.js';
import { keyFor } from '../vocabulary-rules.js';
import { AddByName } from './add-by-name.js';
import { MenuSelect } from './menu-select.js';

// No type of a vocabulary has a blank in its key.
const OTHER = 'something else';

/** @param {'voices' | 'effects'} group @param {any} sound */
export function AddLayer(group, sound) {
  return group === 'voices' ? byName('Another voice', addVoice) : effectDoor();

  function byName(label, onAdd) {
    const element = AddByName({ label, onAdd });
    element.classList.add('no-print');
    return element;
  }

  function effectDoor() {
    const types = Object.entries(sound.vocabulary.effects).sort(([, one], [, other]) => one.label.localeCompare(other.label));
    if (types.length === 0) return byName('Another effect', (name) => addEffect(name));
    const menu = MenuSelect({ word: 'Another effect …', label: 'Another effect', onChoose: (type) => {
      if (type === OTHER) askName();
      else addEffect(type);
    } });
    menu.offer([...types.map(([type, { label }]) => [type, label]), [OTHER, 'something else …']]);
    const place = el('div', { class: 'add-layer no-print' }, menu.element);
    const askName = () => fill(place, byName('What kind of effect?', (name) => {
      addEffect(name);
      fill(place, menu.element);
    })).querySelector('input').focus();
    return place;
  }

  function addVoice(name) {
    sound.edit(({ voices }) => {
      voices[freshKey(name, voices)] = { name, order: nextOrder(voices), on: true, parameters: {} };
    });
  }

  function addEffect(type) {
    sound.edit(({ effects }) => {
      effects[freshKey(type, effects)] = { type, order: nextOrder(effects), on: true, parameters: {} };
    });
  }

  /** Not a key that the starting point uses for something else this piece leaves out. */
  function freshKey(name, layers) {
    return keyFor(name, { ...sound.start()?.[group], ...layers });
  }
}
