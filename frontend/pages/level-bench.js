/** level-bench.js: measures the strings of one rig and advises its sensitivities. */
import { Away, Problem, post, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { applied, duration, reason, shareScale, withReason } from '../level-rules.js';
import { measureReadings, measureTake, measureUpload, sendRecording } from '../level-requests.js';
import { LeakMap } from '../parts/leak-map.js';
import { LevelAdvice } from '../parts/level-advice.js';
import { InputFigures, LevelDifferences, StringReach } from '../parts/level-figures.js';
import { LevelIntake } from '../parts/level-intake.js';
import { LevelStrokes } from '../parts/level-strokes.js';
import { NotRead } from '../parts/not-read.js';
import { PageHead } from '../parts/page-head.js';
import { SaveBar } from '../parts/save-bar.js';
import { TriggerWindows } from '../parts/trigger-windows.js';
import { compareAddress, sheetAddress } from '../places-rules.js';
import { stringNumbers } from '../rig-rules.js';
import { openSheet } from '../save.js';
import { asSentence, localDay, shortDay } from '../words-rules.js';

const MOST_BYTES = 2 ** 31;

export async function show(page, { params: { id } }) {
  const keeping = await openSheet('rigs', id);
  const [instrument, synth] = await Promise.all([
    readSheet('instruments', keeping.content.instrument.id, keeping.content.instrument.revision),
    readSheet('synths', keeping.content.synth.id, keeping.content.synth.revision),
  ]);
  const strings = stringNumbers(instrument.content);
  const notes = Object.fromEntries(strings.map((string) => [string, instrument.content.strings[string].note]));
  const order = strings.map((string) => keeping.content.assignments?.[string]?.input);
  const inputOf = (string) => (order.every(Boolean) ? order[string - 1] : string);
  const attached = structuredClone(keeping.content.levels ?? null);
  const measured = [];
  let asked = 0;

  page.title(`Level bench: ${keeping.content.title}`);
  page.leaf.classList.add('level-bench');
  PageHead(page.leaf, {
    kicker: 'Level bench',
    title: keeping.content.title,
    lead: 'Measure the strings, then set the sensitivities: high enough for your softest stroke, low enough for the neighbour’s loudest.',
    doors: [el('a', { class: 'button', href: sheetAddress('rigs', id) }, 'The rig')],
  });
  const intake = LevelIntake(section(page.leaf), { rig: id, strings, notes, inputs: Math.max(strings.length, ...order.filter(Boolean)), onFiles: takeFiles, onReadings: (body) => run('Working it out …', () => measureReadings(body, query())) });
  const state = el('div', { class: 'bench-state', role: 'status' });
  const bar = el('progress', { max: 1, hidden: true, 'aria-label': 'How far it is' });
  const results = el('div', { class: 'results' });
  page.leaf.append(state, bar, results);
  if (attached) fill(state, el('p', { class: 'pencil' }, `Attached to this rig: a measurement of ${shortDay(attached.measuredOn)}. A new one is compared with it.`));
  page.leaf.append(cautions());
  SaveBar(page.leaf, keeping, { askWhy: true, onSaved: applySaved });

  function query() {
    return { rig: `${id}${keeping.envelope ? `@${keeping.envelope.revision}` : ''}`, ...intake.query() };
  }

  function takeFiles(files) {
    const isTake = files.length === 1 && /\.midi?$/i.test(files[0].name);
    const bytes = files.reduce((sum, file) => sum + file.size, 0);
    if (bytes > MOST_BYTES) {
      fill(state, el('p', { class: 'unsafe' }, 'This is too large: a recording may have 2 GB. A minute is enough.'));
      return;
    }
    run(`Sending ${files[0].name} …`, async (progress) => {
      if (isTake) return measureTake(files[0], query());
      const { upload, recording } = await sendRecording(files, progress('Sending', files[0].name));
      return measureUpload(upload, query(), [], progress('Measuring', `${duration(recording.seconds)} of ${recording.inputs} inputs`));
    });
  }

  function tellProgress(fraction, words) {
    bar.hidden = false;
    bar.value = fraction;
    if (state.textContent !== words) fill(state, el('p', {}, words));
  }

  /** Of several measurements under way only the one that was begun last counts. */
  async function run(words, work) {
    const turn = ++asked;
    const isNewest = () => turn === asked;
    fill(state, el('p', {}, words));
    bar.hidden = false;
    bar.removeAttribute('value');
    try {
      const report = await work((what, which) => (fraction) => { if (isNewest()) tellProgress(fraction, `${what} ${which} …`); });
      if (!isNewest()) return;
      measured.push(report);
      fill(state, el('p', {}, report.recording ? `Measured: ${report.recording.name}, ${duration(report.recording.seconds)}.` : 'Measured.'));
      draw(report);
    } catch (failure) {
      if (!(failure instanceof Problem || failure instanceof Away)) throw failure;
      if (!isNewest()) return;
      fill(state, el('h2', { class: 'unsafe' }, failure instanceof Problem ? failure.title : 'The notebook is out of reach'), el('p', {}, asSentence(failure.message)));
    } finally {
      if (isNewest()) bar.hidden = true;
    }
  }

  function draw(report) {
    fill(results);
    if (report.warnings.length) {
      results.append(el('section', { class: 'warnings' }, el('h2', {}, 'Mind this first'), el('ul', {}, report.warnings.map((words) => el('li', { class: 'unsafe' }, words)))));
    }
    if (report.advice.length) LevelAdvice(part('Advice'), { report, content: keeping.content, notes, onApply: () => apply(report) });
    results.append(el('div', { class: 'applied', role: 'status' }));
    if (report.windows.length) TriggerWindows(part('Trigger windows'), { report, notes, was: shareScale(attached, report.summary) ? attached : null });
    if (report.crosstalkDb.some((row) => row.some((leak) => leak !== null && leak !== 0))) LeakMap(part('Leaks'), { report, notes });
    if (report.waveform && report.recording?.inputs === report.waveform.peaks.length) {
      LevelStrokes(part('The strokes'), { report, notes, inputOf, onCorrected: (segments) => run('Measuring again …', (progress) => measureUpload(report.upload, query(), segments, progress('Measuring', 'again'))) });
    }
    if (report.inputs.length) InputFigures(part('Every input in figures'), report);
    drawComparison(report);
    if (report.strings.length) StringReach(part('Range and delay'), report);
    if (report.notes.length) part('Good to know').append(el('ul', { class: 'ruled' }, report.notes.map((words) => el('li', {}, words))));
  }

  function drawComparison(report) {
    const earlier = [
      attached ? { name: 'before', words: `attached to the rig, ${shortDay(attached.measuredOn)}`, levels: attached } : null,
      ...measured.slice(0, -1).map((each, index) => ({ name: `${index + 1}`, words: `measurement ${index + 1} of this visit${each.summary.from ? `: ${each.summary.from}` : ''}`, levels: each.summary })),
    ].filter(Boolean);
    const place = part('Against another measurement');
    if (earlier.length === 0) {
      place.append(el('p', {}, 'Measure a second recording here (straight and preamp, before and after) and the two stand side by side. A measurement that is applied stays with the rig, so that later ones are compared with it.'));
      return;
    }
    const table = el('div', { class: 'differences' });
    const choice = el('select', { on: { change: () => compare(earlier[Number(choice.value)]) } }, earlier.map((each, index) => el('option', { value: index, selected: index === earlier.length - 1 }, each.words)));
    place.append(el('label', { class: 'field' }, el('span', { class: 'label' }, 'This one against'), choice), table);
    compare(earlier.at(-1));

    async function compare({ name, levels }) {
      const first = name === 'before' ? 'the earlier one' : `measurement ${name}`;
      const chosen = choice.value;
      try {
        const comparison = await post('/api/bench/levels/compare', { first: { name: first, levels }, second: { name: 'this one', levels: report.summary } });
        if (choice.value === chosen) LevelDifferences(table, { comparison, first, second: 'this one' });
      } catch (failure) {
        if (choice.value === chosen) NotRead(table, failure, () => compare({ name, levels }));
      }
    }
  }

  function part(title) {
    const body = el('div');
    results.append(el('section', {}, el('h2', {}, title), body));
    return body;
  }

  async function apply(report) {
    const { advice, summary } = report;
    keeping.reason = withReason(keeping.reason, reason(keeping.base, advice, summary, advice.some((each) => each.isAssumed)));
    keeping.change((content) => Object.assign(content, applied(content, advice, summary, localDay(new Date()))));
    const envelope = await keeping.save();
    if (envelope) applySaved(envelope);
  }

  function applySaved(envelope) {
    const place = results.querySelector('.applied');
    if (!place) return;
    fill(place, el('p', {}, `The rig is now at revision ${envelope.revision}. `,
      el('a', { href: sheetAddress('rigs', id) }, 'See the rig'),
      envelope.parent ? [' or ', el('a', { href: compareAddress('rigs', id, envelope.parent, envelope.revision) }, 'what has changed')] : null, '.'));
  }
}

function cautions() {
  return el('section', { class: 'cautions' }, el('h2', {}, 'Before you connect anything again'),
    el('p', {}, 'Turn the synth and the amplifier down first, then come up slowly: a new sensitivity can be much louder than the old one.'),
    el('p', {}, 'Mind your ears: 85 dBA for 8 hours is the limit NIOSH recommends, and every 3 dB more halves the time. Local rules may ask for less.'));
}

function section(leaf) {
  const element = el('section');
  leaf.append(element);
  return element;
}
