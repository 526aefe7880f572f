/**
 * proposal.js: a first adapter from both sockets; what each control line should get is said here.
 *
 *   const proposal = Proposal(element, { bench });
 *   proposal.update();
 */
import { post } from '../api.js';
import { el, fill } from '../dom.js';
import { same } from '../drafts-rules.js';
import { keyedList } from '../keyed-list.js';
import { asSentence, counted } from '../words-rules.js';
import { instrumentSide, missingForBench, pinsThat, synthSide } from '../wiring-rules.js';
import { Fact } from './editable.js';

/** @param {HTMLElement} element @param {{ bench: import('../bench-keeping.js').BenchKeeping }} state */
export function Proposal(element, { bench }) {
  const lines = el('ul', { class: 'ruled' });
  const button = el('button', { type: 'button', on: { click: press, blur: calm } });
  const remarks = el('ul', { class: 'remarks' });
  const trouble = el('p', { class: 'unsafe', role: 'status' });
  /** What the player wants each line to get, V; not kept: the divider keeps it. @type {Record<string, number>} */
  const wanted = wantedBefore();
  let isSure = false;
  let isAsking = false;
  element.classList.add('proposal');
  fill(element, lines, el('div', { class: 'buttons' }, button), trouble, remarks);
  update();
  return { element, update };

  function routes() {
    return bench.rig.content.adapter?.routes ?? {};
  }

  /** The lines that reach a pin of the synth. */
  function keys() {
    const { connector, controlLines = {} } = bench.synth.content;
    const reached = pinsThat(connector, ({ carries }) => carries === 'control' || carries === 'switch').map((label) => connector.pins[label].role.line);
    return [...new Set(reached)].filter((key) => Object.hasOwn(controlLines, key));
  }

  function wantedBefore() {
    const { connector } = bench.synth.content;
    return Object.fromEntries(Object.values(routes())
      .filter(({ via, synthPin }) => via?.targetVolts !== undefined && connector?.pins?.[synthPin]?.role.line)
      .map(({ via, synthPin }) => [connector.pins[synthPin].role.line, via.targetVolts]));
  }

  function update() {
    keyedList(lines, keys(), (key) => key, Line, (line) => line.update());
    const count = Object.keys(routes()).length;
    button.className = count ? '' : 'inked';
    button.textContent = isSure ? `Really replace ${counted(count, 'route')}?` : count ? 'Propose anew' : 'Propose an adapter';
    button.disabled = isAsking || Boolean(missingForBench(bench.instrument.content, bench.synth.content));
  }

  function calm() {
    isSure = false;
    update();
  }

  async function press(event) {
    if (Object.keys(routes()).length && !isSure) {
      isSure = true;
      update();
      return;
    }
    // The second half of a double click answers nothing that could have been read.
    if (isSure && event.detail > 1) return;
    isSure = false;
    isAsking = true;
    trouble.textContent = '';
    const [request, adapter] = structuredClone([question(), bench.rig.content.adapter]);
    update();
    try {
      const proposal = await post('/api/bench/adapter', request);
      if (same(request, question()) && same(adapter, bench.rig.content.adapter)) {
        bench.rig.change((content) => { content.adapter = proposal.adapter; });
        fill(remarks, proposal.remarks.map((sentence) => el('li', {}, sentence)));
      } else {
        trouble.textContent = 'The bench was changed before the proposal came, so it was not taken: what you wrote stays. Propose anew if you want one.';
      }
    } catch (failure) {
      trouble.textContent = asSentence(failure.message);
    }
    isAsking = false;
    update();
  }

  function question() {
    return {
      instrument: instrumentSide(bench.instrument.content),
      synth: synthSide(bench.synth.content),
      wantedVolts: wanted,
      ...(bench.rig.content.adapter?.parts ? { parts: bench.rig.content.adapter.parts } : {}),
    };
  }

  function Line(key) {
    const line = () => bench.synth.content.controlLines[key];
    const facts = el('dl', { class: 'facts' });
    const bands = el('div', { class: 'buttons' });
    const volts = Fact(facts, { label: '', kind: 'number', unit: 'V', min: -60, max: 60, value: wanted[key] ?? null, empty: 'left open', onEdit: want });
    const term = facts.querySelector('dt');
    const element = el('li', {}, facts, bands);
    showLine();
    return { element, update: showLine };

    function want(value) {
      if (value === null) delete wanted[key];
      else wanted[key] = value;
      showLine();
    }

    function showLine() {
      const { label, minVolts, maxVolts, bands: stretches = [] } = line();
      term.textContent = `Hold “${label}” at`;
      volts.show({ label: `Volts for ${label}`, value: wanted[key] ?? null, help: `It may get ${minVolts} to ${maxVolts} V.` });
      fill(bands, stretches.map(({ fromVolts, toVolts, meaning }) => {
        const middle = Number(((fromVolts + toVolts) / 2).toFixed(3));
        return el('button', { type: 'button', class: 'quiet', 'aria-pressed': String(wanted[key] === middle), on: { click: () => want(middle) } }, `${meaning}: ${middle} V`);
      }));
      bands.hidden = stretches.length === 0;
    }
  }
}
