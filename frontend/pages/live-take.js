/** live-take.js: each string's notes as they arrive over MIDI, ghosts and blips marked at once, and recorded into a take. */
import { allSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { LiveWatch } from '../live-rules.js';
import { LiveBoard } from '../parts/live-board.js';
import { NewTake } from '../parts/new-take.js';
import { PageHead } from '../parts/page-head.js';
import { say } from '../parts/status-line.js';
import { SureButton } from '../parts/sure-button.js';
import { allRecordings, dropRecording, keepRecording } from '../recordings.js';
import { isKept, midiFile, noteMessage } from '../smf-rules.js';
import { sheetAddress } from '../places-rules.js';
import { clock } from '../take-rules.js';
import { moment } from '../words-rules.js';

const KEEP_EVERY_MILLIS = 2000;

export async function show(page) {
  page.title('Play live');
  const [rigs, instruments] = await Promise.all([allSheets('rigs'), allSheets('instruments')]);
  PageHead(page.leaf, { kicker: 'Takes', title: 'Play live', lead: 'Connect the synth’s MIDI to this device and see what it hears, string by string, while you play.' });
  const here = WaitingList('Only on this page so far: do not close it');
  const inBrowser = WaitingList('Only in this browser so far');
  const waiting = el('section', {}, here.elements, inBrowser.elements);
  /** Recordings that this browser would not keep: they are here while the page is. @type {Map<string, import('../recordings.js').Recording>} */
  const held = new Map();
  /** @type {import('../recordings.js').Recording | null} */
  let recording = null;
  addEventListener('beforeunload', (event) => {
    if (held.size || recording) event.preventDefault();
  });
  if (typeof navigator.requestMIDIAccess !== 'function') {
    page.leaf.append(
      el('p', {}, 'This browser cannot listen to MIDI. Several browsers on computers and on Android phones can; those on iPhones and iPads cannot yet.'),
      el('p', {}, 'You lose nothing: record the MIDI with any recorder you have, and ', el('a', { href: '/takes' }, 'bring the file here'), '.'), waiting);
    await drawWaiting();
    return;
  }
  const setup = el('section');
  const stage = el('section');
  const status = el('p', { role: 'status' });
  page.leaf.append(setup, status, stage, waiting);
  const instrument = el('select', { id: 'live-instrument' }, instruments.map((each) => el('option', { value: each.id }, each.title)));
  const base = el('select', { id: 'live-base' }, Array.from({ length: 16 }, (_, index) => el('option', { value: index + 1 }, String(index + 1))));
  const listen = el('button', { type: 'button', class: 'inked', on: { click: start } }, 'Listen');
  fill(setup,
    instruments.length ? el('div', { class: 'field' }, el('label', { class: 'label', for: 'live-instrument' }, 'Instrument'), instrument) : null,
    el('div', { class: 'field' }, el('label', { class: 'label', for: 'live-base' }, 'MIDI channel of the highest string'), base, el('span', { class: 'help' }, 'Each string has a channel of its own, one after another.')),
    el('div', { class: 'buttons' }, listen),
    el('p', { class: 'help' }, 'Turn synth and amplifier down before you connect anything.'));
  await drawWaiting();

  async function start() {
    let access;
    listen.disabled = true;
    try {
      access = await navigator.requestMIDIAccess({ sysex: false });
    } catch {
      status.textContent = 'The browser did not allow it. Allow MIDI for this address, then press Listen again.';
      listen.disabled = false;
      return;
    }
    setup.hidden = true;
    const strings = stringsOf(instruments.find((each) => each.id === instrument.value));
    const watch = LiveWatch({ strings, baseChannel: Number(base.value) });
    const place = el('div');
    const record = el('button', { type: 'button', class: 'inked', on: { click: press } }, 'Record');
    fill(stage, place, el('div', { class: 'buttons' }, record));
    const board = LiveBoard(place, { strings });
    let began = 0;
    let keeping = 0;
    const tune = () => {
      const inputs = [...access.inputs.values()];
      for (const input of inputs) input.onmidimessage = hear;
      status.textContent = inputs.length ? `Listening to ${inputs.map((input) => input.name || 'an input').join(', ')}.` : 'No MIDI input is connected yet. Plug it in; it is found by itself.';
    };
    access.onstatechange = tune;
    tune();

    function hear({ data, timeStamp }) {
      const at = timeStamp || performance.now();
      if (recording && isKept(data)) recording.messages.push({ at: at - began, data: [...data] });
      const message = noteMessage(data);
      if (message) board.hear(watch.hear(message, at));
    }

    async function press() {
      if (!recording) {
        began = performance.now();
        recording = { id: crypto.randomUUID(), startedAt: new Date().toISOString(), strings: Object.values(strings), messages: [] };
        record.textContent = 'Stop';
        keeping = setInterval(() => keep(recording), KEEP_EVERY_MILLIS);
        return;
      }
      clearInterval(keeping);
      const done = recording;
      recording = null;
      record.textContent = 'Record';
      await keep(done);
      say(toldOf(done));
      await drawWaiting();
    }

    function toldOf({ id, messages }) {
      if (messages.length === 0) return 'Nothing came while it recorded.';
      return held.has(id)
        ? 'Recorded, but this browser keeps nothing: it is on this page alone until you keep it in the notebook.'
        : 'Recorded. It is kept in this browser until the notebook has it.';
    }

    // Every few seconds, so that a locked screen or an empty battery costs no more than that.
    async function keep(each) {
      if (each.messages.length === 0) return;
      try {
        await keepRecording(each);
        held.delete(each.id);
      } catch {
        held.set(each.id, each);
        status.textContent = 'This browser cannot keep recordings: do not close the page before the take is in the notebook.';
      }
    }
  }

  async function drawWaiting() {
    const isDone = ({ id }) => id !== recording?.id;
    const kept = (await allRecordings()).filter((each) => isDone(each) && !held.has(each.id));
    here.show([...held.values()].filter(isDone));
    inBrowser.show(kept);
  }

  /** A line stays as it is while its recording waits: a name may be half typed in it. */
  function WaitingList(words) {
    const heading = el('h2', { hidden: true });
    const list = el('ul', { class: 'ruled', hidden: true });
    return {
      elements: [heading, list],
      show(recordings) {
        heading.hidden = list.hidden = recordings.length === 0;
        heading.textContent = recordings.length ? words : '';
        keyedList(list, recordings, ({ id }) => id, waitingLine);
      },
    };
  }

  async function forget(id) {
    held.delete(id);
    try {
      await dropRecording(id);
    } catch {
      // A browser that keeps nothing has nothing to drop; what it does have is listed again.
    }
  }

  function waitingLine({ id, startedAt, strings, messages }) {
    const place = el('div');
    const seconds = (messages.at(-1)?.at ?? 0) / 1000;
    const look = el('button', { type: 'button', on: { click: () => {
      const name = `Live, ${moment(startedAt)}`;
      const file = new File([midiFile(messages)], name, { type: 'audio/midi', lastModified: Date.parse(startedAt) });
      NewTake(place, { rigs, file, strings, onKept: async (envelope) => {
        await forget(id);
        if (held.size === 0) {
          location.assign(sheetAddress('takes', envelope.id));
          return;
        }
        say(`${envelope.title} is in the notebook.`);
        await drawWaiting();
      } });
    } } }, 'Look at it, and keep it');
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const away = SureButton({ word: 'Throw away', question: 'Really throw away?', trouble, act: async () => {
      await forget(id);
      await drawWaiting();
    } });
    return el('li', {}, el('div', { class: 'line' }, el('span', { class: 'name' }, moment(startedAt)), el('span', { class: 'aside' }, clock(seconds)), look, away), trouble, place);
  }
}

function stringsOf(instrument) {
  if (!instrument) return { 1: 'E5', 2: 'A4', 3: 'D4', 4: 'G3' };
  return Object.fromEntries(Object.entries(instrument.content.strings).map(([number, { note }]) => [number, note]));
}
