/**
 * add-layer.js: the door to one more voice or effect, at the end of its list.
 *
 *   place.append(AddLayer('voices', sound));
 */
import { el, fill } from '../dom.js';
import { keyFor, nextOrder } from '../vocabulary-rules.js';
import { AddByName } from './add-by-name.js';

const OTHER = '';

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
    const select = el('select', { 'aria-label': 'Another effect' },
      el('option', { value: OTHER, disabled: true, hidden: true, selected: true }, 'Another effect …'),
      types.map(([type, { label }]) => el('option', { value: type }, label)),
      el('option', { value: 'something else' }, 'something else …'));
    const place = el('div', { class: 'add-layer no-print' }, select);
    select.addEventListener('change', () => {
      const type = select.value;
      select.selectedIndex = 0;
      if (type !== 'something else') addEffect(type);
      else fill(place, byName('What kind of effect?', (name) => {
        addEffect(name);
        fill(place, select);
      })).querySelector('input').focus();
    });
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
