/** new-instrument.js: an instrument of one's own; on the short way in, the first of three stops. */
import { get } from '../api.js';
import { el } from '../dom.js';
import { missingIn } from '../parts/connector-rules.js';
import { editableTitle } from '../parts/gear-page.js';
import { InstrumentForm, blankInstrument } from '../parts/instrument-form.js';
import { PageHead } from '../parts/page-head.js';
import { PathSteps } from '../parts/path-steps.js';
import { SaveBar } from '../parts/save-bar.js';
import { sheetAddress } from '../places-rules.js';
import { newSheet } from '../save.js';

export async function show(page, { query }) {
  const onTheWay = query.get('path') === 'start';
  page.title('New instrument');
  const shapes = (await get('/api/shapes')).items;
  const keeping = newSheet('instruments', blankInstrument());
  // A draft that an earlier release left behind may lack what the form is drawn from.
  keeping.content = { ...blankInstrument(), ...keeping.content };
  PageHead(page.leaf, { kicker: 'New instrument', title: editableTitle(keeping, 'What do you call it?') });
  if (onTheWay) page.leaf.append(PathSteps('instrument'));
  page.leaf.append(el('p', { class: 'pencil' }, 'Pick a tuning close to yours, then touch a note to change it. String 1 is the highest. The socket can wait.'));
  InstrumentForm(page.leaf, { keeping, shapes, isNew: true });
  SaveBar(page.leaf, keeping, {
    saveWord: onTheWay ? 'Save and go on' : 'Save',
    ready: () => (keeping.content.title?.trim() ? missingIn(keeping.content.connector) : 'Give the instrument a name first.'),
    onSaved: (envelope) => location.assign(onTheWay ? `/new/synths?path=start&instrument=${envelope.id}` : sheetAddress('instruments', envelope.id)),
  });
}
