/**
 * piece-facts.js: what is written about a piece, open where it stands. For the piece's page and for a new one.
 *
 *   PieceFacts(leaf, keeping);
 */
import { el } from '../dom.js';
import { stylesOf } from '../pages/pieces-rules.js';
import { Fact } from './editable.js';

/** @param {HTMLElement} leaf @param {import('../save.js').Keeping} keeping */
export function PieceFacts(leaf, keeping) {
  const list = el('dl', { class: 'facts piece-facts' });
  leaf.append(list);
  const text = (field, label, more = {}) => row({ label, ...more }, () => keeping.content[field] ?? '', (content, value) => { content[field] = value; });
  const rows = [
    text('composer', 'Composer', { empty: 'a name, or traditional' }),
    row({ label: 'Styles', empty: 'reel, air, groove …', help: 'With commas between them; one browses by them.' },
      () => (keeping.content.styles ?? []).join(', '), (content, value) => { content.styles = stylesOf(value); }),
    row({ label: 'Tempo', kind: 'number', unit: 'bpm', min: 10, max: 400, empty: 'free', help: 'Quarter notes a minute; times given as note values follow it.' },
      () => keeping.content.tempoBpm ?? null, (content, value) => { content.tempoBpm = value ?? undefined; }),
    text('meter', 'Metre', { empty: 'such as 6/8', maxLength: 20 }),
    text('key', 'Key', { empty: 'such as D mixolydian', maxLength: 40 }),
    text('notes', 'Notes', { kind: 'long', empty: 'add a note' }),
  ];
  keeping.onChange(() => rows.forEach((show) => show()));

  function row(state, read, write) {
    const fact = Fact(list, { ...state, value: read(), onEdit: (value) => keeping.change((content) => write(content, value)) });
    return () => fact.show({ value: read() });
  }
}
