/** new-setlist.js: a set on a new leaf; it may begin as a copy of the one before. */
import { allSheets } from '../api.js';
import { el } from '../dom.js';
import { same } from '../drafts-rules.js';
import { Fact } from '../parts/editable.js';
import { editableTitle } from '../parts/gear-page.js';
import { PageHead } from '../parts/page-head.js';
import { SaveBar } from '../parts/save-bar.js';
import { sheetAddress } from '../places-rules.js';
import { newSheet } from '../save.js';
import { localDay, shortDay } from '../words-rules.js';
import { copiedItems, firstSet } from './new-setlist-rules.js';

export async function show(page, { query }) {
  page.title('New set');
  const [sets, rigs] = await Promise.all([allSheets('setlists'), allSheets('rigs')]);
  const model = sets.find(({ id }) => id === query.get('from')) ?? sets[0];
  const keeping = newSheet('setlists', firstSet(localDay(new Date()), model, rigs[0]));
  const head = PageHead(page.leaf, { kicker: 'New set', title: editableTitle(keeping, 'what is the evening called?') });
  const list = el('dl', { class: 'facts' });
  const { items = {} } = keeping.content;
  const begunWith = Object.keys(items).length ? [model, ...sets].find((set) => same(copiedItems(set), items))?.id ?? 'own' : '';
  if (query.get('from') === model?.id && begunWith !== model?.id && keeping.foundDraftFrom) {
    page.leaf.append(el('p', {}, `You had begun a set before: it stands here as you left it. You came for the pieces of ${model.title}: choose them below if that is what you want.`));
  }
  page.leaf.append(list);
  Fact(list, { label: 'Date', kind: 'date', value: keeping.content.date, check: (value) => (value ? null : 'A set has a date.'), onEdit: (value) => keeping.change((content) => { content.date = value; }) });
  Fact(list, { label: 'Place', value: keeping.content.place ?? '', empty: 'where?', onEdit: (value) => keeping.change((content) => { content.place = value; }) });
  Fact(list, { label: 'Begins with', kind: 'choice', value: begunWith, empty: 'no pieces yet',
    choices: [['', 'no pieces yet'], ...(begunWith === 'own' ? [['own', 'the pieces as you left them']] : []), ...sets.map((set) => [set.id, `the pieces of ${set.title}, ${shortDay(set.content.date)}`])],
    onEdit: (value) => keeping.change((content) => { content.items = value === 'own' ? items : copiedItems(sets.find(({ id }) => id === value)); }) });
  if (rigs.length) {
    Fact(list, { label: 'Rig', kind: 'choice', value: keeping.content.rig?.id ?? '', empty: 'not decided', choices: [...rigs.map((rig) => [rig.id, rig.title]), ['', 'not decided']],
      onEdit: (value) => keeping.change((content) => { content.rig = value ? { id: value } : undefined; }) });
  }
  SaveBar(page.leaf, keeping, {
    ready: () => (keeping.content.title?.trim() ? null : 'Give the set a name first.'),
    onSaved: (envelope) => location.assign(sheetAddress('setlists', envelope.id)),
  });
  head.element.querySelector('button.value').click();
}
