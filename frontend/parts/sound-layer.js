/**
 * sound-layer.js: one voice, or one effect of the chain. What is switched off is folded.
 *
 *   SoundLayer(el('li', { 'data-key': key }), sound, { group: 'voices', key });   // → { element, update }
 */
import { el, fill } from '../dom.js';
import { escaped } from '../recipe-rules.js';
import { read, write } from '../save-rules.js';
import { settingLabel, settingWords } from '../setting-rules.js';
import { inOrder } from '../order-rules.js';
import { Editable } from './editable.js';
import { Mover } from './movable-list.js';
import { Origin } from './setting.js';
import { Settings } from './settings.js';

/** @param {HTMLElement} element @param {any} sound @param {{ group: 'voices' | 'effects', key: string }} state */
export function SoundLayer(element, sound, { group, key }) {
  const pointer = `/${group}/${escaped(key)}`;
  const layer = () => sound.value(pointer) ?? { parameters: {} };
  const type = () => sound.vocabulary.effects[layer().type];
  const parameters = () => (group === 'voices' ? sound.vocabulary.voice : type()?.parameters);
  const name = el('h3');
  const on = el('span', { class: 'on' });
  const fold = el('button', { type: 'button', class: 'quiet fold-button no-print' });
  const glance = el('p', { class: 'glance pencil' });
  const origins = el('span', { class: 'origins' });
  const place = el('div');
  const out = el('button', { type: 'button', class: 'quiet', on: { click: () => sound.edit((settings) => write(settings, pointer, undefined)) } });
  const back = el('button', { type: 'button', class: 'quiet', on: { click: () => sound.giveBack(pointer) } });
  const body = el('div', { class: 'layer-body' }, place);
  // On a phone, what this piece says comes first; the rest is a glance away.
  let isOpen = layer().on !== false && (innerWidth > 640 || sound.own(pointer) === null || sound.ownWithin(pointer));
  element.classList.add('layer', 'keep-together');
  fill(element, el('div', { class: 'layer-head' }, sound.readOnly ? null : Mover(nameWords()), name, on, origins, fold), glance, body);
  fold.addEventListener('click', () => {
    isOpen = !isOpen;
    update();
  });
  const title = group === 'voices'
    ? Editable(name, { label: 'Name of the voice', value: nameWords(), readOnly: sound.readOnly, maxLength: 80, check: (value) => (value.trim() ? null : 'It needs a name.'), onEdit: (value) => sound.edit((settings) => write(settings, `${pointer}/name`, value)) })
    : null;
  const tick = Editable(on, { label: 'on', kind: 'tick', value: true, readOnly: sound.readOnly, onEdit: (value) => {
    isOpen = value;
    sound.edit((settings) => write(settings, `${pointer}/on`, value));
  } });
  const settings = Settings(place, sound, { pointer, parameters, name: nameWords, doors: [back, out] });
  const marks = [
    mark('on', 'Switch', (value) => (value ? 'on' : 'off'), false),
    mark('name', 'Name', (value) => `“${value}”`, true),
    mark('order', 'Place', () => 'its place', true),
  ];
  update();
  return { element, update };

  function mark(field, label, words, quiet) {
    const span = el('span', { class: 'origin' });
    origins.append(span);
    return Origin(span, sound, { pointer: `${pointer}/${field}`, label, words, quiet });
  }

  function update() {
    const isNew = sound.own(pointer) === true && read(sound.start(), pointer) === undefined;
    const { on: isOn = true } = layer();
    element.classList.toggle('off', !isOn);
    if (title) title.show({ value: nameWords() });
    else name.textContent = nameWords();
    tick.show({ value: isOn, about: nameWords() });
    for (const each of marks) each.update();
    if (isNew) fill(origins, el('span', { class: 'origin' }, el('span', { class: 'here' }, 'only in this piece')));
    settings.update();
    body.hidden = !isOpen;
    glance.hidden = isOpen;
    glance.textContent = glanceWords();
    fold.setAttribute('aria-expanded', String(isOpen));
    fill(fold, isOpen ? 'fold' : 'unfold', el('span', { class: 'unseen' }, ` ${nameWords()}`));
    fill(out, 'Take out ', el('span', {}, nameWords()));
    back.hidden = sound.own(pointer) === null || isNew || !sound.ownWithin(pointer);
    fill(back, `All as in ${sound.startName()}`);
  }

  function nameWords() {
    return group === 'voices' ? layer().name ?? key : type()?.label ?? layer().type ?? key;
  }

  function glanceWords() {
    const values = layer().parameters ?? {};
    const known = parameters() ?? {};
    const keys = inOrder(known).filter((each) => Object.hasOwn(values, each));
    return keys.slice(0, 4).map((each) => {
      const { text, unit } = settingWords(values[each], known[each]);
      return `${settingLabel(known[each], each)} ${text}${unit ? ` ${unit}` : ''}`;
    }).join(' · ');
  }
}
