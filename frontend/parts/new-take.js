/**
 * new-take.js: a MIDI file is dropped or chosen, looked at before anything is kept, then kept with its rig and day.
 *
 *   NewTake(element, { rigs });                       // rigs as listed, newest first
 *   const take = NewTake(element, { rigs, strings: ['E5', …], exerciseBpm: 60 });   // a take of the exercise
 *   take.show({ strings, exerciseBpm });               // what it returned, when the script changed; what was filled in stays
 *   NewTake(element, { rigs, file, onKept: () => … })  // with a file that is there already, such as a live recording
 */
import { createSheet, postFile } from '../api.js';
import { playerName } from '../drafts.js';
import { el, fill } from '../dom.js';
import { sheetAddress } from '../places-rules.js';
import { clock, countKinds, countsInWords } from '../take-rules.js';
import { asSentence, localDay, noteName, shortDay } from '../words-rules.js';
import { instead } from './reading-only.js';

const PAUSE_MILLIS = 250;

/** @param {HTMLElement} element @param {{ rigs: any[], file?: File, strings?: string[], exerciseBpm?: number, onKept?: (envelope: any) => void }} state */
export function NewTake(element, { rigs, file, strings: known = [], exerciseBpm, onKept = (envelope) => location.assign(sheetAddress('takes', envelope.id)) }) {
  const input = el('input', { type: 'file', id: 'take-file', accept: '.mid,.midi,audio/midi', on: {
    // Otherwise choosing the same file once more would be no change.
    click: () => { input.value = ''; },
    change: () => input.files[0] && look(input.files[0]),
  } });
  const drop = el('div', { class: 'drop' },
    el('label', { for: 'take-file' }, 'Bring a take'),
    el('p', { class: 'help' }, 'A MIDI file of up to 16 MB. Drop it here, or choose it; nothing is kept before you say so.'),
    input);
  const result = el('div', { class: 'looked-at', role: 'status' });
  // Several may be open at once, each with a file of its own.
  const which = file ? `-${crypto.randomUUID()}` : '';
  let form = null;
  let asked = 0;
  let timer = 0;
  element.classList.add('new-take');
  fill(element, file ? null : drop, result);
  if (file) look(file);
  for (const kind of ['dragenter', 'dragover']) {
    drop.addEventListener(kind, (event) => {
      event.preventDefault();
      drop.classList.add('over');
    });
  }
  drop.addEventListener('dragleave', () => drop.classList.remove('over'));
  drop.addEventListener('drop', (event) => {
    event.preventDefault();
    drop.classList.remove('over');
    if (event.dataTransfer.files[0]) look(event.dataTransfer.files[0]);
  });
  return { show };

  /** @param {{ strings: string[], exerciseBpm?: number }} next */
  function show(next) {
    const isTuned = next.strings.join() !== known.join();
    known = next.strings;
    exerciseBpm = next.exerciseBpm;
    form?.changed(isTuned ? known : undefined);
  }

  async function look(chosen) {
    const turn = ++asked;
    const script = [known, exerciseBpm].join();
    form = null;
    fill(result, el('p', { class: 'pencil' }, 'Reading …'));
    try {
      const report = await read(chosen, known.join(','));
      if (turn !== asked) return;
      form = Form(chosen, report);
      // The script may have changed while it was read.
      if (script !== [known, exerciseBpm].join()) form.changed(known);
    } catch (failure) {
      if (turn === asked) fill(result, el('p', { class: 'unsafe' }, asSentence(failure.message)));
    }
  }

  function read(chosen, strings) {
    const query = new URLSearchParams();
    if (strings) query.set('strings', strings);
    if (exerciseBpm) query.set('exercise', String(exerciseBpm));
    return postFile(`/api/bench/takes?${query}`, chosen, 'audio/midi');
  }

  /** What was found in a file, and what the player says about it; it stays while the file is read in another way. */
  function Form(chosen, first) {
    // One id for the file: pressing twice makes one take.
    const id = crypto.randomUUID();
    const title = el('input', { id: `take-title${which}`, maxlength: 200, value: chosen.name.replace(/\.midi?$/i, '').replaceAll('_', ' ') });
    const date = el('input', { id: `take-date${which}`, type: 'date', value: localDay(new Date(chosen.lastModified || Date.now())) });
    const rig = el('select', { id: `take-rig${which}` },
      el('option', { value: '' }, 'not noted'),
      rigs.map((each) => el('option', { value: `${each.id}@${each.revision}` }, `${each.title}, as on ${shortDay(each.content.date ?? each.savedAt)}`)));
    if (rigs[0]) rig.value = `${rigs[0].id}@${rigs[0].revision}`;
    const strings = el('input', { id: `take-strings${which}`, on: { change: readAgain } });
    const found = el('div');
    const readAs = el('span', { class: 'help' });
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const keep = el('button', { type: 'button', class: 'inked writes', on: { click: save } }, 'Keep this take');
    let report = first;
    let isStale = false;
    fill(result, found,
      field('Name', title, `take-title${which}`), field('Played on', date, `take-date${which}`), field('Rig', rig, `take-rig${which}`),
      field('Strings, highest first', strings, `take-strings${which}`, readAs),
      trouble, instead(), el('div', { class: 'buttons' }, keep));
    tell();
    return { changed };

    function tell() {
      fill(found,
        el('p', { class: 'number' }, `${report.notes.heard} notes in ${clock(report.seconds)}, ${countsInWords(countKinds(report.faults))}.`),
        report.score ? el('p', {}, `Against the script: ${Math.round(report.score.onset.f1 * 100)} % right by pitch and start, ${Math.round(report.score.onsetOffset.f1 * 100)} % with ends too.`) : null,
        report.remarks.map((remark) => el('p', { class: 'pencil small' }, remark)));
      strings.value = Object.values(report.strings).join(', ');
      readAs.textContent = `Read as ${Object.values(report.strings).map(noteName).join(' ')}. Change it if that is not your instrument.`;
    }

    function changed(tuning) {
      if (tuning) strings.value = tuning.join(', ');
      isStale = true;
      clearTimeout(timer);
      timer = setTimeout(readAgain, PAUSE_MILLIS);
    }

    async function readAgain() {
      const turn = ++asked;
      clearTimeout(timer);
      isStale = true;
      try {
        const next = await read(chosen, strings.value.trim().replaceAll(/[\s,]+/g, ','));
        if (turn !== asked) return;
        report = next;
        isStale = false;
        trouble.textContent = '';
        tell();
      } catch (failure) {
        if (turn === asked) trouble.textContent = asSentence(failure.message);
      }
    }

    async function save() {
      keep.disabled = true;
      trouble.textContent = '';
      try {
        if (isStale) await readAgain();
        if (isStale) {
          keep.disabled = false;
          return;
        }
        const midi = await postFile('/api/blobs', chosen, 'audio/midi');
        const [rigId, revision] = rig.value.split('@');
        const content = {
          title: title.value.trim() || 'Take',
          date: date.value || undefined,
          rig: rigId ? { id: rigId, revision: Number(revision) } : undefined,
          midi,
          strings: report.strings,
          layout: report.layout,
          exercise: exerciseBpm ? { tempoBpm: exerciseBpm } : undefined,
        };
        onKept(await createSheet('takes', { id, content, by: playerName() }));
      } catch (failure) {
        keep.disabled = false;
        trouble.textContent = failure.name === 'Away' ? 'The notebook is out of reach, so this take is not kept yet. Try again in a moment.' : asSentence(failure.message);
      }
    }
  }
}

function field(label, input, id, help) {
  return el('div', { class: 'field' }, el('label', { class: 'label', for: id }, label), input, help);
}
