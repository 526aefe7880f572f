/** setlist-comparison.js: one set against another: the rig once, then what is new, left out, moved, and what sounds different. */
import { allSheets, get } from '../api.js';
import { el, fill } from '../dom.js';
import { ChangeList, changeWords } from '../parts/change-list.js';
import { opensFirst } from '../parts/menu-select.js';
import { PageHead } from '../parts/page-head.js';
import { setlistComparisonAddress, sheetAddress } from '../places-rules.js';
import { longDay, shortDay } from '../words-rules.js';
import { moveWords, otherRecipe, spotOf, told } from './setlist-comparison-rules.js';

export async function show(page, { query }) {
  const reading = allSheets('setlists');
  const newest = query.has('was') && query.has('now') ? [] : await reading;
  const was = spotOf(query.get('was')) ?? (newest[1] ? { id: newest[1].id } : null);
  const now = spotOf(query.get('now')) ?? (newest[0] ? { id: newest[0].id } : null);
  if (!was || !now) {
    PageHead(page.leaf, { title: 'Two sets' });
    page.leaf.append(el('p', {}, 'It takes two sets to compare, and they are not written yet.'), el('div', { class: 'buttons' }, el('a', { class: 'button inked', href: '/new/setlists' }, 'Write a set')));
    return;
  }
  let showsSame = query.get('all') === 'true';
  const [comparison, sets] = await Promise.all([get('/api/setlists/compare', { was: spot(was), now: spot(now), all: true }), reading]);
  page.title(`${comparison.now.title} since ${comparison.was.title}`);
  PageHead(page.leaf, {
    kicker: 'What changed',
    title: comparison.now.title,
    lead: [longDay(comparison.now.date), ' since ', el('a', { href: sheetAddress('setlists', comparison.was.id, was.revision) }, comparison.was.title), `, ${longDay(comparison.was.date)}`],
    doors: [el('a', { class: 'button inked', href: sheetAddress('setlists', comparison.now.id, now.revision) }, 'Open the set'), el('button', { type: 'button', on: { click: () => print() } }, 'Print')],
  });
  const telling = el('div', { class: 'telling' });
  const same = el('input', { type: 'checkbox', checked: showsSame, on: { change: () => {
    showsSame = same.checked;
    const address = new URL(location.href);
    if (showsSame) address.searchParams.set('all', 'true');
    else address.searchParams.delete('all');
    history.replaceState(null, '', address);
    draw();
  } } });
  page.twoColumns();
  page.leaf.append(el('p', { class: 'summary' }, comparison.summary || 'Nothing has changed.'), telling);
  page.margin.append(
    el('div', { class: 'choosers no-print' },
      el('label', { class: 'tick' }, same, 'Show what stayed the same'),
      chooser('This set', now, (id) => [was, { id }]), chooser('Compared with', was, (id) => [{ id }, now])));
  draw();

  function draw() {
    const { added, dropped, moved, changed, same: unchanged } = told(comparison);
    fill(telling,
      comparison.rig.map(rig),
      section('New in the set', added.map((piece) => line(piece.nowPosition, piece, piece.nowRecipe))),
      section('Left out', dropped.map((piece) => line(piece.wasPosition, piece, piece.wasRecipe, true))),
      section('Moved', moved.map((piece) => {
        const [before, after] = moveWords(comparison, piece);
        return line(null, piece, null, false, [el('del', {}, before), arrow(), el('ins', {}, after)]);
      })),
      section('Sounds different', changed.map(sounds)),
      showsSame ? section('As last time', unchanged.map((piece) => line(piece.nowPosition, piece, piece.nowRecipe)), 'Nothing is as it was.') : null);
  }

  function rig({ title, changes, wasId, nowId }) {
    const list = el('div');
    ChangeList(list, changes, { none: 'Another rig, set the same.' });
    return el('section', {}, el('h2', {}, 'On the rig'),
      el('p', { class: 'pencil of-rig' }, el('a', { href: sheetAddress('rigs', nowId ?? wasId) }, title)), list);
  }

  function section(title, entries, none) {
    if (entries.length === 0 && !none) return null;
    return el('section', {}, el('h2', {}, title), entries.length ? el('ul', { class: 'ruled' }, entries) : el('p', { class: 'pencil' }, none));
  }

  function line(position, { pieceId, title }, recipe, isGone = false, words = null) {
    return el('li', { class: 'entry' },
      position === null ? null : el('span', { class: 'position' }, position),
      el('a', { class: isGone ? 'name gone-from-set' : 'name', href: sheetAddress('pieces', pieceId) }, title),
      recipe ? el('span', { class: 'aside pencil' }, recipe) : null,
      words ? el('span', { class: 'alteration moved-words' }, words) : null);
  }

  function sounds(piece) {
    const list = el('div', { class: 'sound-changes' });
    const { changes, wasRecipe, nowRecipe } = piece;
    if (changes.length) ChangeList(list, changes);
    return el('li', { class: 'sounding' },
      el('div', { class: 'of' },
        el('span', { class: 'position' }, piece.nowPosition),
        el('a', { class: 'name', href: sheetAddress('pieces', piece.pieceId) }, piece.title)),
      otherRecipe(piece) ? el('p', { class: 'other-recipe' }, el('span', { class: 'pencil' }, 'recipe '), changeWords({ where: [], change: 'changed', was: wasRecipe || 'none', now: nowRecipe || 'none' }, [])) : null,
      list);
  }

  function chooser(label, chosen, next) {
    const select = el('select', { on: { change: () => location.assign(setlistComparisonAddress(...next(select.value))) } },
      sets.map((set) => el('option', { value: set.id, selected: set.id === chosen.id }, `${set.title}, ${shortDay(set.content.date)}`)));
    opensFirst(select);
    return el('label', { class: 'field' }, el('span', { class: 'label' }, chosen.revision ? `${label} (revision ${chosen.revision})` : label), select);
  }
}

function spot({ id, revision }) {
  return revision ? `${id}@${revision}` : id;
}

function arrow() {
  return el('span', { class: 'arrow' }, el('span', { 'aria-hidden': 'true' }, ' → '), el('span', { class: 'unseen' }, ' became '));
}
