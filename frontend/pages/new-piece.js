/** new-piece.js: a piece on a new leaf. */
import { editableTitle } from '../parts/gear-page.js';
import { PageHead } from '../parts/page-head.js';
import { PieceFacts } from '../parts/piece-facts.js';
import { SaveBar } from '../parts/save-bar.js';
import { sheetAddress } from '../places-rules.js';
import { newSheet } from '../save.js';

export async function show(page) {
  page.title('New piece');
  const keeping = newSheet('pieces', { title: '', composer: '', styles: [], meter: '', key: '', notes: '' });
  const head = PageHead(page.leaf, { kicker: 'New piece', title: editableTitle(keeping, 'what is it called?') });
  PieceFacts(page.leaf, keeping);
  SaveBar(page.leaf, keeping, {
    ready: () => (keeping.content.title?.trim() ? null : 'Give the piece a name first.'),
    onSaved: (envelope) => location.assign(sheetAddress('pieces', envelope.id)),
  });
  head.element.querySelector('button.value').click();
}
