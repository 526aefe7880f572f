/**
 * meter-plan.js: what to measure, in order, and what each reading says.
 *
 *   const plan = MeterPlan(element, { keeping });     // the rig's keeping: readings are kept in it
 *   plan.show(sheet, standing({ sheet, missing }));   // see wiring-rules.js
 */
import { el, fill } from '../dom.js';
import { same } from '../drafts-rules.js';
import { keyedList } from '../keyed-list.js';
import { counted } from '../words-rules.js';
import { Cautions } from './cautions.js';
import { meterProgress, parseReading, readingHelp, readingWords } from './meter-rules.js';

/** [phase, heading, what is being done]. */
const PHASES = [
  ['unplugged', 'Nothing plugged in', 'measuring'],
  ['powered', 'Synth on, the instrument’s end free', 'powering'],
];

/** @param {HTMLElement} element @param {{ keeping: import('../save.js').Keeping }} state */
export function MeterPlan(element, { keeping }) {
  const standing = el('p', { role: 'status' });
  const gone = el('div', { class: 'buttons' });
  const lists = Object.fromEntries(PHASES.map(([phase]) => [phase, el('ol', { class: 'ruled' })]));
  let steps = [];
  let verdicts = new Map();
  element.classList.add('meter-plan');
  const stop = el('p', { class: 'unsafe' });
  fill(element, stop, standing, gone, PHASES.map(([phase, heading, doing]) => el('section', {}, el('h3', {}, heading), Cautions(doing), lists[phase])));
  return { element, show };

  /** @param {any} sheet the server's answer, or null @param {ReturnType<typeof import('../wiring-rules.js').standing>} told */
  function show(sheet, told) {
    steps = sheet?.meterPlan ?? [];
    verdicts = new Map((sheet?.verdicts ?? []).map((verdict) => [verdict.step, verdict]));
    stop.hidden = !sheet || told.isReady;
    stop.textContent = told.isJudged
      ? 'Not ready to solder: put what is unsafe right before you build or measure, and plug nothing in.'
      : `Not judged yet: ${told.words} These steps leave that out: build and measure nothing by them, and plug nothing in.`;
    const progress = meterProgress(steps, sheet?.verdicts ?? []);
    const words = `${counted(progress.good, 'step')} good, ${progress.wrong} wrong, ${progress.left} to measure.`;
    if (standing.textContent !== words) standing.textContent = words;
    fill(gone, progress.gone.length ? el('button', { type: 'button', on: { click: () => forget(progress.gone) } },
      `Forget ${counted(progress.gone.length, 'reading')} of steps that are gone`) : null);
    for (const [phase] of PHASES) {
      keyedList(lists[phase], steps.filter((step) => step.phase === phase), (step) => step.id, Step, (line, step) => line.update(step));
    }
  }

  function forget(ids) {
    keeping.change((content) => { for (const id of ids) delete content.readings[id]; });
  }

  function Step(first) {
    let step = first;
    const isVoltage = step.kind === 'voltage';
    const number = el('b', { class: 'place' });
    const instruction = el('p');
    const verdict = el('p', { class: 'verdict', role: 'status' });
    const suspects = el('ul');
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const input = el('input', { inputmode: isVoltage ? 'decimal' : 'text', autocomplete: 'off', maxlength: 16, enterkeyhint: 'next', placeholder: isVoltage ? 'V' : 'Ω' });
    const none = isVoltage ? null : el('button', { type: 'button', class: 'quiet', on: { click: () => {
      trouble.textContent = '';
      write({ read: 'open' });
    } } }, 'no connection');
    const line = el('li', { class: 'step' }, number, el('div', { class: 'what' }, instruction, verdict, suspects, trouble), el('div', { class: 'typed' }, input, none));
    let before = null;
    input.addEventListener('focus', () => { before = kept() ?? null; });
    input.addEventListener('input', () => {
      const reading = parseReading(input.value, step.kind);
      input.setAttribute('aria-invalid', String(reading === undefined));
      trouble.textContent = '';
      if (reading !== undefined) write(reading, true);
    });
    // Half of what was typed is nobody's reading: what cannot be read gives way to what stood there before.
    input.addEventListener('blur', () => {
      const typed = input.value.trim();
      if (parseReading(typed, step.kind) === undefined) {
        trouble.textContent = `“${typed}” was not taken: ${readingHelp(step.kind)}.`;
        write(before);
      }
      input.setAttribute('aria-invalid', 'false');
      input.value = readingWords(kept());
    });
    input.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter') return;
      event.preventDefault();
      [...element.querySelectorAll('.step input')].find((each, index, all) => all[index - 1] === input)?.focus();
    });
    update(first);
    return { element: line, update };

    function kept() {
      return keeping.content.readings?.[step.id];
    }

    function write(reading, isTyped = false) {
      if (same(kept() ?? null, reading)) return;
      keeping.change((content) => {
        content.readings ??= {};
        if (reading === null) delete content.readings[step.id];
        else content.readings[step.id] = reading;
      });
      if (!isTyped) input.value = readingWords(reading);
    }

    function update(next) {
      step = next;
      number.textContent = step.number;
      instruction.textContent = step.instruction;
      input.setAttribute('aria-label', `Reading of step ${step.number}`);
      none?.setAttribute('aria-label', `Step ${step.number}: no connection`);
      if (document.activeElement !== input) input.value = readingWords(kept());
      const told = verdicts.get(step.id);
      line.classList.toggle('good', told?.judgement === 'good');
      line.classList.toggle('wrong', Boolean(told) && told.judgement !== 'good');
      const words = told ? `${told.judgement === 'good' ? '✓ Good' : '✕ Not as it should be'}. ${told.judgement === 'good' ? '' : told.sentence}` : '';
      if (verdict.textContent !== words) verdict.textContent = words;
      verdict.hidden = !told;
      fill(suspects, (told?.suspects ?? []).slice(1).map((suspect) => el('li', {}, `or ${suspect}`)));
    }
  }
}
