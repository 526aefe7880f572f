/** new-rig.js: an instrument and a synth put together; on the short way in, the last of three stops. */
import { allSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { Fact } from '../parts/editable.js';
import { editableTitle } from '../parts/gear-page.js';
import { PageHead } from '../parts/page-head.js';
import { PathSteps } from '../parts/path-steps.js';
import { RigStrings } from '../parts/rig-strings.js';
import { SaveBar } from '../parts/save-bar.js';
import { sheetAddress } from '../places-rules.js';
import { firstRig, withGear } from '../rig-rules.js';
import { newSheet } from '../save.js';
import { listed, localDay } from '../words-rules.js';

export async function show(page, { query }) {
  page.title('New rig');
  const [instruments, synths] = await Promise.all([allSheets('instruments'), allSheets('synths')]);
  if (instruments.length === 0 || synths.length === 0) {
    drawMissing(page.leaf, instruments.length === 0, synths.length === 0);
    return;
  }
  const find = (sheets, id) => sheets.find((sheet) => sheet.id === id);
  const instrument = find(instruments, query.get('instrument')) ?? instruments[0];
  const synth = find(synths, query.get('synth')) ?? synths[0];
  const keeping = newSheet('rigs', firstRig(instrument, synth, localDay(new Date())));
  PageHead(page.leaf, { kicker: 'New rig', title: editableTitle(keeping) });
  if (query.get('path') === 'start') page.leaf.append(PathSteps('rig'));
  const asked = [instrument, synth].filter(({ id }) => [query.get('instrument'), query.get('synth')].includes(id));
  if (!asked.every(({ id }) => [keeping.content.instrument.id, keeping.content.synth.id].includes(id))) {
    page.leaf.append(el('p', {}, `You had begun a rig before: it stands here as you left it. You came for ${listed(asked.map(({ title }) => title))}: choose below if that is what you want.`));
  }
  const list = el('dl', { class: 'facts' });
  const place = el('section');
  page.leaf.append(list, place);
  choice('Instrument', 'instrument', instruments);
  choice('Synth', 'synth', synths);
  Fact(list, { label: 'Set on', kind: 'date', value: keeping.content.date ?? '', empty: 'no day noted', onEdit: (value) => keeping.change((content) => { content.date = value || undefined; }) });
  let strings = drawStrings();
  keeping.onChange(() => strings.update());
  SaveBar(page.leaf, keeping, {
    ready: () => (keeping.content.title?.trim() ? null : 'Give the rig a name first.'),
    onSaved: (envelope) => location.assign(sheetAddress('rigs', envelope.id)),
  });

  function choice(label, field, sheets) {
    Fact(list, {
      label, kind: 'choice', value: keeping.content[field].id, choices: sheets.map((sheet) => [sheet.id, sheet.title]), readOnly: sheets.length === 1,
      onEdit: (id) => {
        const was = pair();
        keeping.change((content) => {
          content[field] = { id };
          Object.assign(content, withGear(content, was, pair()));
        });
        strings = drawStrings();
      },
    });
  }

  function chosen(sheets, field) {
    return find(sheets, keeping.content[field].id) ?? sheets[0];
  }

  function pair() {
    return { instrument: chosen(instruments, 'instrument'), synth: chosen(synths, 'synth') };
  }

  function drawStrings() {
    return RigStrings(fill(place), { keeping, instrument: pair().instrument.content, synth: pair().synth.content });
  }
}

function drawMissing(leaf, noInstrument, noSynth) {
  PageHead(leaf, { title: 'New rig' });
  leaf.append(
    el('p', {}, 'A rig joins an instrument and a synth. ', noInstrument && noSynth ? 'Neither is written down yet.' : noInstrument ? 'There is no instrument yet.' : 'There is no synth yet.'),
    el('div', { class: 'buttons' }, noInstrument
      ? el('a', { class: 'button inked', href: '/new/instruments?path=start' }, 'Describe the instrument')
      : el('a', { class: 'button inked', href: '/new/synths?path=start' }, 'Describe the synth')));
}
