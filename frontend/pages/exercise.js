/** exercise.js: scripted strokes to play to a click, on paper or on the screen; a take of them is scored against the script. */
import { allSheets, get } from '../api.js';
import { Click } from '../click.js';
import { el, fill } from '../dom.js';
import { whereAt } from '../exercise-rules.js';
import { ExerciseSheet } from '../parts/exercise-sheet.js';
import { NewTake } from '../parts/new-take.js';
import { PageHead } from '../parts/page-head.js';
import { Stepper } from '../parts/stepper.js';
import { clock } from '../take-rules.js';
import { NO_SOUND } from '../tone.js';
import { asSentence, number } from '../words-rules.js';

const VIOLIN = ['E5', 'A4', 'D4', 'G3'];
const TEMPO = { min: 40, max: 120, step: 2 };

export async function show(page, { query }) {
  page.title('The exercise');
  const [instruments, rigs] = await Promise.all([allSheets('instruments'), allSheets('rigs')]);
  let tempo = within(Number(query.get('tempo')) || 60);
  let exercise = null;
  let sheet = null;
  let take = null;
  let asked = 0;
  PageHead(page.leaf, { kicker: 'Takes', title: 'The exercise', lead: 'The same strokes every time. Record them before and after you change a setting: then you know which one tracked better.',
    doors: [el('button', { type: 'button', on: { click: () => print() } }, 'Print')] });
  const choose = el('select', { id: 'exercise-instrument', on: { change: load } }, instruments.map((each) => el('option', { value: each.id }, each.title)));
  const stepper = el('div');
  const start = el('button', { type: 'button', class: 'inked', disabled: true, on: { click: press } }, 'Count me in');
  const where = el('p', { class: 'where', 'aria-live': 'off' });
  const summary = el('p', {});
  const place = el('div');
  const takePlace = el('div');
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  const again = el('button', { type: 'button', hidden: true, on: { click: load } }, 'Try again');
  page.leaf.append(
    el('div', { class: 'exercise-setup no-print' },
      instruments.length ? el('div', {}, el('label', { class: 'label', for: 'exercise-instrument' }, 'Instrument'), choose) : null,
      el('div', {}, el('span', { class: 'label' }, 'Beats a minute'), stepper),
      start, where),
    el('p', { class: 'help no-print' }, 'The click is soft. Turn headphones and amplifier down before it starts.'),
    el('div', { class: 'no-print' }, trouble, again),
    summary, place,
    el('section', { class: 'no-print' }, el('h2', {}, 'A take of it'),
      el('p', {}, 'Start recording, play to the click, stop, and bring the MIDI file here. It may begin at any moment: the script is laid where it fits.'), takePlace));
  Stepper(stepper, { label: 'Beats a minute', value: tempo, scale: TEMPO, onStep: (next) => {
    tempo = next;
    load();
  } });
  const click = Click({ onBeat: (beat) => {
    sheet?.playAt(beat);
    where.textContent = beat === null ? '' : whereAt(exercise.passages, exercise.countInBeats, beat).words;
    start.textContent = beat === null ? 'Count me in' : 'Stop';
    running = beat !== null;
  } });
  let running = false;
  addEventListener('pagehide', () => click.stop());
  await load();

  function strings() {
    const instrument = instruments.find((each) => each.id === choose.value);
    return instrument ? Object.keys(instrument.content.strings).sort().map((key) => instrument.content.strings[key].note) : VIOLIN;
  }

  async function load() {
    const turn = ++asked;
    const played = strings();
    click.stop();
    let next;
    try {
      next = await get('/api/exercise', { strings: played.join(','), tempo });
    } catch (failure) {
      if (!exercise) throw failure;
      if (turn === asked) tell(failure);
      return;
    }
    // Of several answers under way only the newest counts.
    if (turn !== asked) return;
    click.stop();
    exercise = next;
    start.disabled = false;
    tell(null);
    const last = exercise.passages.at(-1);
    const seconds = ((last.firstBeat + last.beats) * 60) / exercise.tempoBpm;
    fill(summary, `Count ${exercise.countInBeats} at ${number(exercise.tempoBpm)} a minute, then play; four beats of rest between passages. About ${clock(seconds)} in all. A square is a down-bow, a V an up-bow; a note without a name is the open string.`);
    sheet?.leave();
    sheet = ExerciseSheet(place, { exercise, strings: played });
    const script = { strings: played, exerciseBpm: exercise.tempoBpm };
    if (take) take.show(script);
    else take = NewTake(takePlace, { rigs, ...script });
  }

  /** The script that stands there is still the one before. @param {Error | null} failure */
  function tell(failure) {
    trouble.textContent = failure ? `${asSentence(failure.message)} Below is still the script at ${number(exercise.tempoBpm)} a minute.` : '';
    again.hidden = !failure;
  }

  async function press() {
    if (running) {
      click.stop();
      return;
    }
    const last = exercise.passages.at(-1);
    try {
      await click.start(exercise.tempoBpm, exercise.countInBeats, last.firstBeat + last.beats);
    } catch {
      where.textContent = NO_SOUND;
    }
  }
}

function within(bpm) {
  return Math.min(TEMPO.max, Math.max(TEMPO.min, bpm));
}
