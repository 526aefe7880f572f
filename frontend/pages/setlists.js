/** setlists.js: the sets, those ahead first; each one step from what changed since the one before. */
import { allSheets } from '../api.js';
import { el } from '../dom.js';
import { PageHead } from '../parts/page-head.js';
import { setlistComparisonAddress, sheetAddress } from '../places-rules.js';
import { counted, dayFrom, localDay, longDay } from '../words-rules.js';
import { lastTime } from './setlist-rules.js';

export async function show(page) {
  page.title('Sets');
  const sets = await allSheets('setlists');
  const today = localDay(new Date());
  const isAhead = ({ content }) => content.state === 'planned' && content.date >= today;
  const ahead = sets.filter(isAhead).sort((one, other) => one.content.date.localeCompare(other.content.date));
  const past = sets.filter((set) => !isAhead(set));
  PageHead(page.leaf, { title: 'Sets', lead: 'Pieces in order, for one date.', doors: [el('a', { class: 'button inked', href: '/new/setlists' }, 'New set')] });
  if (sets.length === 0) page.leaf.append(el('p', {}, 'No set is written down yet. A set has a date, a place, and pieces in order.'));
  drawGroup('Ahead', ahead);
  drawGroup(ahead.length ? 'Before' : '', past);

  function drawGroup(title, group) {
    if (group.length === 0) return;
    page.leaf.append(el('section', {}, title ? el('h2', {}, title) : null, el('ul', { class: 'ruled set-list' }, group.map(line))));
  }

  function line(set) {
    const { date, place, state, items } = set.content;
    const before = lastTime(sets, set);
    return el('li', {},
      el('a', { class: 'line', href: sheetAddress('setlists', set.id) },
        el('span', { class: 'name' }, set.title),
        el('span', { class: 'aside' }, dayFrom(date, today)),
        el('span', { class: 'about pencil' }, [longDay(date), place, counted(Object.keys(items).length, 'piece'), state === 'planned' && date < today ? 'not marked as played' : ''].filter(Boolean).join(' · '))),
      before ? el('a', { class: 'against', href: setlistComparisonAddress({ id: before.id }, { id: set.id }) }, `what changed since ${before.title}`) : null);
  }
}
