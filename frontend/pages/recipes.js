/** recipes.js: the recipes: starting points first, then by piece. */
import { allSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { PageHead } from '../parts/page-head.js';
import { SearchField } from '../parts/search-field.js';
import { sheetAddress } from '../places-rules.js';
import { counted, shortDay } from '../words-rules.js';
import { byPiece } from './recipes-rules.js';

export async function show(page) {
  page.title('Recipes');
  PageHead(page.leaf, {
    title: 'Recipes',
    lead: 'The settings for a piece, usually on top of a starting point.',
    doors: [el('a', { class: 'button inked', href: '/new/recipes' }, 'New recipe'), el('a', { class: 'button', href: '/new/recipes?kind=start' }, 'New starting point')],
  });
  const field = el('div');
  const list = el('div', { class: 'recipe-list' });
  page.leaf.append(field, list);
  // Before the field is there: the first answer can come over nothing that was typed.
  await draw('');
  SearchField(field, { label: 'Find a recipe', onSearch: draw });

  async function draw(words, signal) {
    const recipes = await allSheets('recipes', { q: words });
    if (signal?.aborted) return;
    const { startingPoints, pieces } = byPiece(recipes);
    fill(list,
      recipes.length === 0 ? el('p', { class: 'pencil' }, words ? `No recipe says “${words}”.` : 'No recipe yet. Begin with a starting point: the sound most pieces are near to.') : null,
      startingPoints.length ? el('section', {}, el('h2', {}, 'Starting points'), el('ul', { class: 'ruled starting-points' }, startingPoints.map(startingPoint))) : null,
      pieces.length ? el('section', {}, el('h2', {}, 'By piece'), el('ul', { class: 'ruled' }, pieces.map(([title, group]) => el('li', { class: 'of-piece' },
        el('h3', {}, el('a', { href: sheetAddress('pieces', group[0].content.piece) }, title)),
        el('ul', {}, group.map(recipe)))))) : null);
  }

  function startingPoint(sheet) {
    return el('li', {}, el('a', { class: 'line', href: sheetAddress('recipes', sheet.id) },
      el('span', { class: 'name' }, sheet.title),
      el('span', { class: 'aside' }, `revision ${sheet.revision}, followed by ${counted(sheet.extras?.followers ?? 0, 'recipe')}`)));
  }

  function recipe(sheet) {
    const { followsTitle, lastPlayed } = sheet.extras ?? {};
    return el('li', {}, el('a', { class: 'line', href: sheetAddress('recipes', sheet.id) },
      el('span', { class: 'name' }, sheet.title),
      el('span', { class: 'over pencil' }, followsTitle ? `on top of ${followsTitle}` : 'stands alone'),
      el('span', { class: 'aside' }, lastPlayed ? `last played ${shortDay(lastPlayed)}` : 'not played yet')));
  }
}
