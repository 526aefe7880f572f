/** wiring-bench.js: one rig on the bench, in the order a player works: pins, adapter, drawing, meter, sound, paper. */
import { get } from '../api.js';
import { BenchCheck } from '../bench-check.js';
import { openBench } from '../bench-keeping.js';
import { el, fill } from '../dom.js';
import { AdapterDrawing } from '../parts/adapter-drawing.js';
import { BenchSheet } from '../parts/bench-sheet.js';
import { BenchStops } from '../parts/bench-stops.js';
import { Cautions } from '../parts/cautions.js';
import { missingIn, synthRoleWords } from '../parts/connector-rules.js';
import { ConnectorEditor } from '../parts/connector-editor.js';
import { Fact } from '../parts/editable.js';
import { Fold } from '../parts/fold.js';
import { HistoryList } from '../parts/history-list.js';
import { MeterPlan } from '../parts/meter-plan.js';
import { PageHead } from '../parts/page-head.js';
import { PinPlaces } from '../parts/pin-places.js';
import { ProbeTable } from '../parts/probe-table.js';
import { Proposal } from '../parts/proposal.js';
import { ReadyMark } from '../parts/ready-mark.js';
import { missingInAdapter } from '../parts/route-rules.js';
import { RouteList } from '../parts/route-list.js';
import { SaveBar } from '../parts/save-bar.js';
import { SoundSide } from '../parts/sound-side.js';
import { TakeAlong } from '../parts/take-along.js';
import { sheetAddress } from '../places-rules.js';
import { inputsByRoutes, standing, stringsElsewhere } from '../wiring-rules.js';
import { listed } from '../words-rules.js';

const STOPS = [['pins', 'Pins'], ['adapter', 'Adapter'], ['drawing', 'Drawing'], ['meter', 'Meter'], ['sound', 'Sound'], ['paper', 'Paper']];
const SERIES = ['E6', 'E12', 'E24', 'E48', 'E96', 'E192'].map((name) => [name, name]);

export async function show(page, { params: { rigId } }) {
  const [bench, shapes] = await Promise.all([openBench(rigId), get('/api/shapes')]);
  const { rig, instrument, synth } = bench;
  const check = BenchCheck({ bench, onAnswer: draw });
  const updates = [];
  page.title(`Wiring: ${rig.content.title}`);
  page.twoColumns();
  PageHead(page.leaf, {
    kicker: 'Wiring bench',
    title: rig.content.title,
    lead: [el('a', { href: sheetAddress('instruments', instrument.id) }, instrument.content.title), ' into ', el('a', { href: sheetAddress('synths', synth.id) }, synth.content.title)],
    doors: [el('a', { class: 'button', href: sheetAddress('rigs', rigId) }, 'The rig'), el('button', { type: 'button', on: { click: () => print() } }, 'Print the bench sheet')],
  });
  const mark = ReadyMark(el('div', { class: 'no-print' }));
  const again = el('button', { type: 'button', class: 'no-print', on: { click: () => check.again() } }, 'Try again');
  page.leaf.append(mark.element, again, BenchStops(STOPS));
  const isNew = !Object.keys(rig.content.adapter?.routes ?? {}).length;
  drawPins(step('pins', 'What the pins carry', isNew));
  drawAdapter(step('adapter', 'The adapter', !isNew));
  drawDrawing(step('drawing', 'The drawing', !isNew));
  drawMeter(step('meter', 'The meter plan', false));
  const sound = SoundSide(step('sound', 'The sound side', false), { bench });
  updates.push(() => sound.show(check.sheet?.strings ?? []));
  const takeAlong = TakeAlong(step('paper', 'On paper and elsewhere', false), { title: rig.content.title });
  updates.push((told) => takeAlong.show(check.sheet, told));
  const paper = BenchSheet(el('section'), { bench });
  page.leaf.append(paper.element);
  // On the screen the answer before stays for the moment that the next one takes; paper would keep it.
  updates.push((told) => paper.show(check.sheet, check.isAsking ? standing({ sheet: null, missing: 'The newest change is still being looked at.' }) : told));
  SaveBar(page.leaf, /** @type {any} */ (bench), { askWhy: true, ready: missing, onSaved: drawMargin });
  bench.onChange(look);
  drawMargin();
  look();

  function missing() {
    return missingIn(instrument.content.connector) ?? missingIn(synth.content.connector) ?? missingInAdapter(rig.content.adapter);
  }

  function look() {
    check.look();
    draw();
  }

  function draw() {
    const told = standing({
      sheet: check.sheet,
      missing: check.missing ?? missingInAdapter(rig.content.adapter),
      isEmpty: !Object.keys(rig.content.adapter?.routes ?? {}).length,
    });
    mark.show(told);
    again.hidden = !check.hasFailed;
    for (const update of updates) update(told);
  }

  function step(id, title, open) {
    const body = Fold(page.leaf, { title, open });
    body.parentElement.id = id;
    body.parentElement.classList.add('no-print');
    return body;
  }

  function drawPins(body) {
    const probePlace = el('div');
    const socket = el('div');
    const other = el('div');
    fill(body,
      el('p', {}, 'Measure the instrument’s socket pin by pin: to ground with everything off, then in silence, then while one string is bowed and the others are damped.'),
      Cautions('measuring'),
      probePlace,
      el('details', { open: !instrument.content.connector }, el('summary', {}, el('h3', {}, 'The instrument’s socket, as written down')), socket),
      el('details', { open: !synth.content.connector }, el('summary', {}, el('h3', {}, 'The synth’s socket')), other,
        el('p', { class: 'help' }, 'What its control lines mean is written on ', el('a', { href: sheetAddress('synths', synth.id) }, 'the synth’s own page'), '.')));
    const lines = () => Object.keys(synth.content.controlLines ?? {});
    const editors = [
      ConnectorEditor(socket, { keeping: instrument, shapes: shapes.items, lines }),
      ConnectorEditor(other, { keeping: synth, shapes: shapes.items, lines }),
    ];
    let probe = null;
    updates.push(() => {
      for (const editor of editors) editor.update();
      probePlace.hidden = !instrument.content.connector;
      if (!instrument.content.connector) return;
      if (probe) probe.update();
      else probe = ProbeTable(probePlace, { keeping: instrument });
    });
  }

  function drawAdapter(body) {
    const news = el('p', { class: 'pencil' });
    const inputs = el('div');
    const parts = el('dl', { class: 'facts' });
    const proposal = Proposal(el('div'), { bench });
    const routes = RouteList(el('div'), { bench });
    fill(body,
      Cautions('soldering'), news,
      el('details', { open: isNew }, el('summary', {}, el('h3', {}, 'Propose one from both sockets')), proposal.element),
      el('h3', {}, 'Routes'), routes.element, inputs,
      el('details', {}, el('summary', {}, el('h3', {}, 'Resistors it is built from')), parts));
    const editParts = (field) => (value) => rig.change((content) => {
      content.adapter ??= { routes: {} };
      content.adapter.parts = { ...content.adapter.parts, [field]: value ?? undefined };
    });
    const read = () => ({ series: 'E24', tolerancePercent: 1, ratingMilliwatts: 250, ...rig.content.adapter?.parts });
    const facts = [
      ['series', Fact(parts, { label: 'Series', kind: 'choice', choices: SERIES, value: read().series, onEdit: editParts('series') })],
      ['tolerancePercent', Fact(parts, { label: 'Tolerance', kind: 'number', unit: '%', min: 0.01, max: 20, value: read().tolerancePercent, onEdit: editParts('tolerancePercent') })],
      ['ratingMilliwatts', Fact(parts, { label: 'Rated for', kind: 'number', unit: 'mW', min: 10, max: 10_000, value: read().ratingMilliwatts, onEdit: editParts('ratingMilliwatts') })],
    ];
    updates.push(() => {
      proposal.update();
      routes.show(check.sheet?.findings ?? []);
      for (const [field, fact] of facts) fact.show({ value: read()[field] });
      news.textContent = bench.holdsOlderGear ? 'The rig was saved with an earlier revision of its instrument or synth. The newest lies on the bench, and saving takes it over.' : '';
      news.hidden = !news.textContent;
      drawInputs(inputs);
    });
  }

  /** The rig's inputs and the adapter's routes can say different things. */
  function drawInputs(place) {
    const reached = inputsByRoutes(rig.content.adapter, instrument.content.connector, synth.content.connector);
    const elsewhere = stringsElsewhere(rig.content.assignments ?? {}, reached);
    const words = elsewhere.map((string) => `string ${string} to ${reached[string] === undefined ? 'no input' : `input ${reached[string]}`}`);
    if (place.dataset.words === words.join()) return;
    place.dataset.words = words.join();
    fill(place, elsewhere.length ? [
      el('p', { class: 'pencil' }, `The adapter leads ${listed(words)}; the rig says otherwise.`),
      el('div', { class: 'buttons' }, el('button', { type: 'button', on: { click: () => rig.change((content) => {
        for (const string of elsewhere) {
          content.assignments ??= {};
          content.assignments[string] = { trimDecibels: 0, ...content.assignments[string], input: reached[string] };
        }
      }) } }, 'Write the adapter’s inputs into the rig')),
    ] : null);
  }

  function drawDrawing(body) {
    let side = 'mating';
    const drawing = AdapterDrawing(el('div'), { onSide: (next) => {
      side = next;
      for (const place of places) place.update();
    } });
    const none = el('p', { class: 'pencil' });
    const places = [
      PinPlaces(el('div'), { keeping: instrument, title: 'Instrument', side: () => side }),
      PinPlaces(el('div'), { keeping: synth, title: 'Synth', side: () => side, roleIn: synthRoleWords }),
    ];
    fill(body, none, drawing.element,
      el('details', {}, el('summary', {}, el('h3', {}, 'Where the pins sit')),
        el('p', { class: 'help' }, 'Numbering on old plugs is odd: look at the plug itself, from the side that is written above.'),
        el('div', { class: 'pin-places-pair' }, places.map((place) => place.element))));
    updates.push(({ isJudged, words }) => {
      none.textContent = isJudged ? '' : check.sheet ? `${words} The drawing leaves that out.` : words;
      none.hidden = !none.textContent;
      drawing.element.hidden = !check.sheet;
      drawing.show(check.sheet?.drawings ?? null);
      for (const place of places) place.update();
    });
  }

  function drawMeter(body) {
    const plan = MeterPlan(el('div'), { keeping: rig });
    const none = el('p', { class: 'pencil' }, 'There is nothing to measure before there are routes.');
    fill(body, none, plan.element);
    updates.push((told) => {
      none.hidden = Boolean(check.sheet?.meterPlan.length);
      plan.element.hidden = !none.hidden;
      plan.show(check.sheet, told);
    });
  }

  function drawMargin() {
    page.margin.classList.add('no-print');
    const history = el('div');
    fill(page.margin, el('h2', {}, 'History of the rig'), history);
    if (rig.envelope) HistoryList(history, { kind: 'rigs', id: rigId, current: rig.envelope.revision });
  }
}
