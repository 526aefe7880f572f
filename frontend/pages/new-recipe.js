/** new-recipe.js: a recipe for a piece on top of a starting point, or a starting point. */
import { allSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { Fact } from '../parts/editable.js';
import { editableTitle } from '../parts/gear-page.js';
import { PageHead } from '../parts/page-head.js';
import { SaveBar } from '../parts/save-bar.js';
import { sheetAddress } from '../places-rules.js';
import { newSheet } from '../save.js';
import { listed } from '../words-rules.js';
import { ontoStart } from './new-recipe-rules.js';
import { bySong } from './pieces-rules.js';
import { byPiece } from './recipes-rules.js';

export async function show(page, { query }) {
  const [pieces, recipes, synths] = await Promise.all([allSheets('pieces'), allSheets('recipes'), allSheets('synths')]);
  const starts = byPiece(recipes).startingPoints;
  const isStart = query.get('kind') === 'start';
  const word = isStart ? 'New starting point' : 'New recipe';
  page.title(word);
  if (!isStart && pieces.length === 0) {
    PageHead(page.leaf, { title: word });
    page.leaf.append(el('p', {}, 'A recipe is for a piece, and no piece is written down yet.'), el('div', { class: 'buttons' },
      el('a', { class: 'button inked', href: '/new/pieces' }, 'Write down a piece'), el('a', { class: 'button', href: '/new/recipes?kind=start' }, 'Or a starting point')));
    return;
  }
  const find = (sheets, id) => sheets.find((sheet) => sheet.id === id);
  const wanted = { piece: isStart ? undefined : find(pieces, query.get('piece'))?.id, start: find(starts, query.get('start')) ?? starts[0] };
  const keeping = newSheet('recipes', ontoStart({ title: '', piece: wanted.piece, synth: synths[0]?.id }, isStart ? null : wanted.start));
  // An unfinished one may be of the other sort: the address decides.
  if (isStart && (keeping.content.piece || keeping.content.follows)) keeping.change((content) => Object.assign(content, { piece: undefined }, ontoStart({ title: content.title, synth: synths[0]?.id }, null)));
  if (!isStart && wanted.piece && !keeping.content.piece) keeping.change((content) => { content.piece = wanted.piece; });
  const head = PageHead(page.leaf, { kicker: word, title: editableTitle(keeping, 'what is it called?') });
  const list = el('dl', { class: 'facts' });
  const advice = el('p', { class: 'pencil' });
  if (!isStart && isOfSomethingElse()) {
    page.leaf.append(el('p', {}, `You had begun a recipe before: it stands here as you left it. You came for ${listed(asked().map(({ title }) => title))}: choose below if that is what you want.`));
  }
  page.leaf.append(list, advice);
  draw();
  SaveBar(page.leaf, keeping, { ready: missing, onSaved: (envelope) => location.assign(sheetAddress('recipes', envelope.id)) });
  head.element.querySelector('button.value').click();

  /** What the address names. */
  function asked() {
    return [find(pieces, query.get('piece')), find(starts, query.get('start'))].filter(Boolean);
  }

  function isOfSomethingElse() {
    return !asked().every(({ id }) => [keeping.content.piece, keeping.content.follows?.id].includes(id));
  }

  function draw() {
    const { piece, follows, synth } = keeping.content;
    fill(list);
    if (!isStart) {
      Fact(list, { label: 'For', kind: 'choice', value: piece ?? '', empty: 'choose a piece', choices: [['', 'choose a piece'], ...bySong(pieces).map((each) => [each.id, each.title])],
        onEdit: (value) => keeping.change((content) => { content.piece = value || undefined; }) });
      Fact(list, { label: 'On top of', kind: 'choice', value: follows?.id ?? '', empty: 'nothing: it stands alone', choices: [...starts.map((each) => [each.id, `${each.title}, revision ${each.revision}`]), ['', 'nothing: it stands alone']],
        onEdit: (value) => {
          keeping.change((content) => Object.assign(content, ontoStart(content, find(starts, value))));
          advise();
        } });
    }
    if (synths.length) {
      Fact(list, { label: 'Synth', kind: 'choice', value: synth ?? '', empty: 'none', choices: [...synths.map((each) => [each.id, each.title]), ['', 'none']],
        onEdit: (value) => keeping.change((content) => { content.synth = value || undefined; }) });
    }
    advise();
  }

  function advise() {
    advice.textContent = keeping.content.follows
      ? 'It begins exactly like its starting point; what you change afterwards is this piece’s own.'
      : 'It begins empty: voices and effects are put in on its page.';
  }

  function missing() {
    if (!keeping.content.title?.trim()) return 'Give it a name first.';
    return isStart || keeping.content.piece ? null : 'Choose the piece it is for.';
  }
}
