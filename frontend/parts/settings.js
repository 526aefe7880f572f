/**
 * settings.js: the values of one layer of a sound, in the vocabulary's order, and the doors to put one in or take one out.
 *
 *   Settings(element, sound, { pointer: '/voices/warm', parameters: () => vocabulary.voice, name: () => 'Warm' });
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { escaped } from '../recipe-rules.js';
import { read, write } from '../save-rules.js';
import { firstValue, settingLabel } from '../setting-rules.js';
import { inOrder } from '../order-rules.js';
import { isNameOfKey, keyFor } from '../vocabulary-rules.js';
import { MenuSelect } from './menu-select.js';
import { Setting } from './setting.js';

// No key of a vocabulary has a blank in it.
const OTHER = 'something else';

/** @param {HTMLElement} element @param {any} sound @param {{ pointer: string, parameters: () => Record<string, any> | undefined, name: () => string, doors?: any[] }} state  name: of the layer; doors: more of them */
export function Settings(element, sound, { pointer, parameters, name: nameWords, doors: more = [] }) {
  const list = el('ul', { class: 'settings' });
  const put = MenuSelect({ word: 'put in …', label: 'Put a setting in', onChoose: putIn });
  const take = MenuSelect({ word: 'take out …', label: 'Take a setting out', onChoose: (key) => sound.edit((settings) => write(settings, at(key), undefined)) });
  const doors = el('div', { class: 'setting-doors no-print' }, put.element, take.element, more);
  fill(element, list, sound.readOnly ? null : doors);
  update();
  return { update };

  function at(key) {
    return `${pointer}/parameters/${escaped(key)}`;
  }

  function known() {
    return parameters() ?? {};
  }

  function update() {
    const values = sound.value(`${pointer}/parameters`) ?? {};
    const order = inOrder(known());
    const keys = [...order.filter((key) => Object.hasOwn(values, key)), ...Object.keys(values).filter((key) => !Object.hasOwn(known(), key)).sort()];
    // A value of another type is asked for in another way: the cell is drawn anew.
    keyedList(list, keys, (key) => `${key} ${typeof values[key] === 'boolean'}`, (key) => Setting(el('li'), sound, {
      pointer: at(key), parameter: own(known(), key), label: settingLabel(own(known(), key), key),
    }), (part) => part.update());
    put.element.setAttribute('aria-label', `Put a setting in: ${nameWords()}`);
    take.element.setAttribute('aria-label', `Take a setting out: ${nameWords()}`);
    const unset = order.filter((key) => !Object.hasOwn(values, key));
    put.offer([...unset.map((key) => [key, settingLabel(known()[key], key)]), [OTHER, 'something else …']]);
    take.offer(keys.map((key) => [key, settingLabel(own(known(), key), key)]));
    take.element.hidden = keys.length === 0;
  }

  function putIn(key) {
    if (key === OTHER) {
      askName();
      return;
    }
    const before = read(sound.start(), at(key));
    sound.edit((settings) => write(settings, at(key), before ?? firstValue(own(known(), key))));
    openSetting(settingLabel(own(known(), key), key));
  }

  /** A setting the synth's sheet does not know: writing it down comes first. */
  function askName() {
    const name = el('input', { placeholder: 'what is it called?', 'aria-label': 'Name of the setting', maxlength: 60, autocomplete: 'off' });
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const asked = el('span', {}, name, trouble);
    const finish = () => {
      const label = name.value.trim();
      if (label && !isNameOfKey(label)) {
        trouble.textContent = 'Only the letters a to z and figures can be kept here. Write it with those, or put the setting into the synth’s sheet, where it can have any name; Escape leaves it.';
        return;
      }
      asked.replaceWith(put.element);
      update();
      if (!label) return;
      const key = keyFor(label, sound.value(`${pointer}/parameters`) ?? {});
      sound.edit((settings) => write(settings, at(key), 0));
      openSetting(settingLabel(undefined, key));
    };
    name.addEventListener('keydown', (event) => {
      if (event.key === 'Escape') name.value = '';
      if (event.key !== 'Enter' && event.key !== 'Escape') return;
      event.preventDefault();
      name.blur();
      if (name.isConnected) name.focus();
    });
    name.addEventListener('blur', finish);
    put.element.replaceWith(asked);
    name.focus();
  }

  function openSetting(label) {
    const cell = [...list.children].find((item) => item.querySelector('.label').textContent === label);
    cell?.querySelector('button.value')?.click();
  }
}

function own(object, key) {
  return Object.hasOwn(object, key) ? object[key] : undefined;
}
