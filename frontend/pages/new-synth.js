/** new-synth.js: a synth; on the short way in, the second of three stops. */
import { allSheets, get } from '../api.js';
import { el } from '../dom.js';
import { missingIn } from '../parts/connector-rules.js';
import { editableTitle } from '../parts/gear-page.js';
import { PageHead } from '../parts/page-head.js';
import { PathSteps } from '../parts/path-steps.js';
import { SaveBar } from '../parts/save-bar.js';
import { SynthForm, blankSynth } from '../parts/synth-form.js';
import { sheetAddress } from '../places-rules.js';
import { newSheet } from '../save.js';
import { missingInSynth } from '../vocabulary-rules.js';

export async function show(page, { query }) {
  const onTheWay = query.get('path') === 'start';
  const instrument = query.get('instrument') ?? '';
  page.title('New synth');
  const [{ items: shapes }, known] = await Promise.all([get('/api/shapes'), onTheWay ? allSheets('synths') : []]);
  const keeping = newSheet('synths', blankSynth());
  // A draft that an earlier release left behind may lack what the form is drawn from.
  keeping.content = { ...blankSynth(), ...keeping.content };
  PageHead(page.leaf, { kicker: 'New synth', title: editableTitle(keeping, 'What do you call it?') });
  if (onTheWay) page.leaf.append(PathSteps('synth'));
  if (known.length) {
    page.leaf.append(el('p', {}, 'You have described ', known.map((synth, index) => [index ? ', ' : null,
      el('a', { href: onward(instrument, synth.id) }, synth.title)]), ' already: go on with it, or describe another.'));
  }
  page.leaf.append(el('p', { class: 'pencil' }, 'A name and the scale for sensitivity are enough to begin. What can be set on it, you can write down piece by piece.'));
  SynthForm(page.leaf, { keeping, shapes });
  SaveBar(page.leaf, keeping, {
    saveWord: onTheWay ? 'Save and go on' : 'Save',
    ready: () => missingInSynth(keeping.content) ?? missingIn(keeping.content.connector),
    onSaved: (envelope) => location.assign(onTheWay ? onward(instrument, envelope.id) : sheetAddress('synths', envelope.id)),
  });
}

function onward(instrument, synth) {
  return `/new/rigs?${new URLSearchParams({ path: 'start', instrument, synth })}`;
}
