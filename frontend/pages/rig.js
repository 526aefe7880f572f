/** rig.js: one rig: strings across the page with their sensitivities, how they came to be so, and the way back. */
import { get, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { ChangeList } from '../parts/change-list.js';
import { Fact } from '../parts/editable.js';
import { editableTitle } from '../parts/gear-page.js';
import { GearNews } from '../parts/gear-news.js';
import { HistoryList } from '../parts/history-list.js';
import { NotRead } from '../parts/not-read.js';
import { OldRevision } from '../parts/old-revision.js';
import { PageHead } from '../parts/page-head.js';
import { RigStrings } from '../parts/rig-strings.js';
import { SaveBar } from '../parts/save-bar.js';
import { ShareDialog } from '../parts/share-dialog.js';
import { StringHistory } from '../parts/string-history.js';
import { TakesOfRig } from '../parts/takes-of-rig.js';
import { UsedBy } from '../parts/used-by.js';
import { sheetAddress, wiringAddress } from '../places-rules.js';
import { openSheet } from '../save.js';
import { AdapterSummary } from '../parts/adapter-summary.js';
import { shortDay } from '../words-rules.js';

export async function show(page, { params: { id }, query }) {
  const old = Number(query.get('revision')) || 0;
  const keeping = await openSheet('rigs', id);
  const newest = keeping.envelope?.revision;
  if (old && old !== newest) {
    await showOld(page, await readSheet('rigs', id, old), newest);
    return;
  }
  page.twoColumns();
  const [instrument, synth] = await gear(keeping.content);
  drawHead();
  const news = GearNews(section(page.leaf), { keeping, newest: await newestGear(keeping.content) });
  const strings = RigStrings(section(page.leaf), { keeping, instrument: instrument.content, synth: synth.content });
  drawCourse(section(page.leaf));
  TakesOfRig(section(page.leaf), { id });
  drawFacts();
  const adapter = AdapterSummary(section(page.leaf), { adapter: keeping.content.adapter, instrument: instrument.content, synth: synth.content });
  SaveBar(page.leaf, keeping, { askWhy: true, onSaved: refresh });
  keeping.onChange(() => {
    news.update();
    strings.update();
    adapter.show(keeping.content.adapter);
  });
  drawMargin();

  function drawHead() {
    page.title(keeping.content.title);
    PageHead(page.leaf, {
      kicker: 'Rig',
      title: editableTitle(keeping),
      lead: [el('a', { href: sheetAddress('instruments', instrument.id) }, instrument.title), ' into ', el('a', { href: sheetAddress('synths', synth.id) }, synth.title)],
      doors: [
        el('a', { class: 'button inked', href: `/new/log?rig=${id}` }, 'Log a rehearsal'),
        el('a', { class: 'button', href: wiringAddress(id) }, 'Wiring bench'),
        el('button', { type: 'button', class: 'writes', on: { click: () => ShareDialog(keeping).open() } }, 'Share'),
        el('a', { class: 'button', href: `/levels/${id}` }, 'Level bench'),
      ],
    });
  }

  async function drawCourse(place) {
    if (!keeping.envelope || keeping.baseRevision < 2) return;
    const picture = el('div');
    fill(place, el('h2', {}, 'How the strings got here'), picture);
    let course;
    try {
      course = (await get(`/api/rigs/${id}/strings`)).strings;
    } catch (failure) {
      NotRead(picture, failure, () => drawCourse(place));
      return;
    }
    StringHistory(picture, {
      strings: course,
      notes: Object.fromEntries(Object.entries(instrument.content.strings).map(([number, string]) => [number, string.note])),
      customaryStart: synth.content.sensitivityScale.customaryStart,
    });
  }

  function drawFacts() {
    const list = el('dl', { class: 'facts' });
    section(page.leaf).append(el('h2', {}, 'About it'), list);
    const edit = (field) => (value) => keeping.change((content) => { content[field] = value; });
    const date = Fact(list, { label: 'Set on', kind: 'date', value: keeping.content.date ?? '', empty: 'no day noted', onEdit: (value) => edit('date')(value || undefined) });
    const notes = Fact(list, { label: 'Notes', kind: 'long', value: keeping.content.notes, empty: 'add a note', onEdit: edit('notes') });
    const { levels } = keeping.content;
    if (levels) list.append(el('dt', {}, 'Levels'), el('dd', {}, `measured ${shortDay(levels.measuredOn)}${levels.from ? ` (${levels.from})` : ''}`));
    keeping.onChange(() => {
      date.show({ value: keeping.content.date ?? '' });
      notes.show({ value: keeping.content.notes });
    });
  }

  function drawMargin() {
    page.margin.classList.add('no-print');
    const history = el('div');
    const users = el('div');
    fill(page.margin, el('h2', {}, 'History'), history, el('h2', {}, 'Where it is used'), users);
    if (!keeping.envelope) return;
    HistoryList(history, { kind: 'rigs', id, current: keeping.envelope.revision });
    UsedBy(users, { kind: 'rigs', id });
  }

  function refresh(envelope) {
    const tookNewer = envelope.content.instrument.revision !== instrument.revision || envelope.content.synth.revision !== synth.revision;
    if (tookNewer) location.reload();
    page.title(keeping.content.title);
    drawMargin();
  }
}

async function showOld(page, envelope, newest) {
  const [instrument, synth] = await gear(envelope.content);
  page.title(`${envelope.title}, revision ${envelope.revision}`);
  page.twoColumns();
  PageHead(page.leaf, { kicker: 'Rig', title: envelope.title, lead: `${instrument.title} into ${synth.title}` });
  OldRevision(page.leaf, { envelope, newest });
  RigStrings(section(page.leaf), { keeping: { content: envelope.content }, instrument: instrument.content, synth: synth.content, readOnly: true });
  AdapterSummary(section(page.leaf), { adapter: envelope.content.adapter, instrument: instrument.content, synth: synth.content });
  if (envelope.content.notes) page.leaf.append(el('h2', {}, 'Notes'), el('p', { class: 'written' }, envelope.content.notes));
  const changes = el('div');
  fill(page.margin, el('h2', {}, 'What has changed since'), changes);
  ChangeList(changes, (await get(`/api/rigs/${envelope.id}/compare`, { was: envelope.revision, now: newest })).changes);
}

function gear({ instrument, synth }) {
  return Promise.all([readSheet('instruments', instrument.id, instrument.revision), readSheet('synths', synth.id, synth.revision)]);
}

async function newestGear({ instrument, synth }) {
  const [newestInstrument, newestSynth] = await Promise.all([readSheet('instruments', instrument.id), readSheet('synths', synth.id)]);
  return { instrument: newestInstrument, synth: newestSynth };
}

function section(leaf) {
  const element = el('section');
  leaf.append(element);
  return element;
}
