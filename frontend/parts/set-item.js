/**
 * set-item.js: one piece of a set: its place, what it is played with, a word to oneself.
 *
 *   SetItem(el('li', { 'data-key': key }), keeping, { key, pieces, recipes, rigs, readOnly });   // maps of envelopes by id; → { element, update }
 */
import { el, fill } from '../dom.js';
import { changesRig, playingOrder, referenceTo } from '../pages/setlist-rules.js';
import { sheetAddress } from '../places-rules.js';
import { number } from '../words-rules.js';
import { Editable } from './editable.js';
import { Mover } from './movable-list.js';

/**
 * @param {HTMLElement} element
 * @param {any} keeping
 * @param {{ key: string, pieces: Map<string, any>, recipes: Map<string, any>, rigs: Map<string, any>, readOnly?: boolean }} state
 */
export function SetItem(element, keeping, { key, pieces, recipes, rigs, readOnly = false }) {
  const item = () => keeping.content.items[key] ?? {};
  const piece = pieces.get(item().piece);
  const title = piece?.title ?? 'A piece that is no longer here';
  const position = el('span', { class: 'position', 'aria-hidden': 'true' });
  const facts = [piece?.content.key, piece?.content.tempoBpm ? `${number(piece.content.tempoBpm)} bpm` : ''].filter(Boolean).join(' · ');
  const recipe = el('span', { class: 'with' });
  const recipeLink = el('a', { class: 'open-recipe no-print' });
  const rig = el('span', { class: 'on-rig' });
  const note = el('span', { class: 'note' });
  const change = (edit) => keeping.change((content) => edit(content.items[key]));
  element.classList.add('set-item');
  fill(element,
    readOnly ? null : Mover(title), position,
    el('div', { class: 'what' },
      el('div', { class: 'first' }, el('a', { class: 'name', href: sheetAddress('pieces', item().piece) }, title), el('span', { class: 'pencil facts-line' }, facts)),
      el('div', { class: 'second' }, el('span', { class: 'sound' }, recipe, ' ', recipeLink), rig, note)),
    readOnly ? null : el('button', { type: 'button', class: 'quiet take-out no-print', 'aria-label': `Take out ${title}`, title: 'Take it out of the set', on: { click: () => keeping.change((content) => { delete content.items[key]; }) } }, '×'));
  const own = [...recipes.values()].filter(({ content }) => content.piece === item().piece);
  const recipeChoice = Editable(recipe, { label: `Recipe for ${title}`, kind: 'choice', readOnly, ...recipeState(), empty: 'no recipe',
    onEdit: (id) => change((each) => { each.recipe = referenceTo(keeping.content, recipes.get(id)); }) });
  const rigChoice = Editable(rig, { label: `Rig for ${title}`, kind: 'choice', readOnly, ...rigState(),
    onEdit: (id) => change((each) => { each.rig = referenceTo(keeping.content, rigs.get(id)); }) });
  const noteField = Editable(note, { label: `Note on ${title}`, value: item().note ?? '', readOnly, empty: readOnly ? ' ' : 'note', maxLength: 2000, onEdit: (value) => change((each) => { each.note = value; }) });
  update();
  return { element, update };

  function recipeState() {
    const { id = '' } = item().recipe ?? {};
    const chosen = recipes.get(id);
    const choices = own.map((each) => [each.id, each.title]);
    if (chosen && !own.includes(chosen)) choices.push([id, chosen.title]);
    return { value: id, choices: [...choices, ['', 'no recipe']] };
  }

  function rigState() {
    const setRig = rigs.get(keeping.content.rig?.id);
    const { id = '' } = item().rig ?? {};
    const isSetRig = id !== '' && id === keeping.content.rig?.id;
    return { value: isSetRig ? '' : id, empty: 'the set’s rig', choices: [['', setRig ? `the set’s rig (${setRig.title})` : 'the set’s rig'], ...[...rigs.values()].map((each) => [each.id, each.title])] };
  }

  function update() {
    const order = playingOrder(keeping.content);
    const place = order.indexOf(key);
    position.textContent = String(place + 1);
    recipeChoice.show(recipeState());
    rigChoice.show(rigState());
    noteField.show({ value: item().note ?? '' });
    const { id, revision } = item().recipe ?? {};
    recipeLink.hidden = !id;
    if (id) recipeLink.href = sheetAddress('recipes', id, revision);
    fill(recipeLink, revision ? `revision ${revision}` : 'open', el('span', { class: 'unseen' }, ` the recipe for ${title}`));
    const differs = changesRig(keeping.content, item(), keeping.content.items[order[place - 1]]);
    rig.classList.toggle('changes', differs);
    element.classList.toggle('rig-as-set', !differs && !item().rig);
  }
}
