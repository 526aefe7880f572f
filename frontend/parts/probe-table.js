/**
 * probe-table.js: what a meter shows at every pin of the instrument, what that says about the pin, and taking it over.
 * On the phone one condition at a time is shown, as it is measured: bow one string, go from pin to pin.
 *
 *   const table = ProbeTable(element, { keeping });   // the instrument's keeping; its content has a connector
 *   table.update();
 */
import { post } from '../api.js';
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { stringNumbers } from '../rig-rules.js';
import { same } from '../drafts-rules.js';
import { counted } from '../words-rules.js';
import { pinOrder, roleWords } from './connector-rules.js';
import { UNITS, cellWords, conditions, confidenceWords, isNews, likelyNews, probeRequest, writeCell } from './probe-rules.js';

const PAUSE_MILLIS = 250;

/** @param {HTMLElement} element @param {{ keeping: import('../save.js').Keeping }} state */
export function ProbeTable(element, { keeping }) {
  const columns = conditions(stringNumbers(keeping.content));
  const heads = columns.map(({ key, words, units }) => el('th', { scope: 'col', colspan: units.length, 'data-condition': key }, words));
  const head = el('tr', {}, el('th', { scope: 'col' }, 'Pin'), heads);
  const table = el('table', { class: 'probe' }, el('thead', {}, head));
  const choice = el('select', { 'aria-label': 'What is going on while you measure' }, columns.map(({ key, words }) => el('option', { value: key }, words)));
  const odds = el('ul', { class: 'remarks', 'aria-label': 'Readings that do not fit' });
  const all = el('button', { type: 'button', on: { click: takeLikely } });
  const told = el('p', { class: 'pencil', role: 'status' });
  const again = el('button', { type: 'button', hidden: true, on: { click: askAgain } }, 'Try again');
  let report = null;
  let asked = null;
  let timer = 0;
  element.classList.add('probe-table');
  choice.addEventListener('change', showCondition);
  fill(element,
    el('p', { class: 'choice' }, el('span', { class: 'label' }, 'While you measure'), choice),
    el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Readings of the pins' }, table),
    el('p', { class: 'help' }, 'Meter against the metal shell or ground. “no” stands for no connection. An empty field means: not measured.'),
    told, odds, el('div', { class: 'buttons' }, again, all));
  update();
  return { update };

  function update() {
    const pins = pinOrder(keeping.content.connector?.pins ?? {});
    keyedList(table, ['', ...pins], (label) => `pin ${label}`, (label) => (label === '' ? table.tHead : PinRows(label)), (rows) => rows.update?.());
    showCondition();
    ask();
    showReport();
  }

  function showCondition() {
    for (const cell of table.querySelectorAll('[data-condition]')) cell.classList.toggle('now', cell.dataset.condition === choice.value);
  }

  // Asked again only when what it would be asked differs from what it was asked.
  function ask() {
    if (!keeping.content.connector || !keeping.content.probe) {
      report = null;
      asked = null;
      return;
    }
    const request = probeRequest(keeping.content);
    if (same(request, asked)) return;
    asked = request;
    clearTimeout(timer);
    timer = setTimeout(() => answer(request), PAUSE_MILLIS);
  }

  async function answer(request) {
    try {
      const next = await post('/api/bench/probe', request);
      if (!same(request, asked)) return;
      report = next;
      told.textContent = '';
      again.hidden = true;
    } catch (failure) {
      if (!same(request, asked)) return;
      // What was read out of other readings would be taken for these.
      report = null;
      told.textContent = failure.message;
      again.hidden = false;
    }
    update();
  }

  function askAgain() {
    told.textContent = 'Asking again …';
    again.hidden = true;
    answer(asked);
  }

  function showReport() {
    fill(odds, (report?.contradictions ?? []).map(({ sentence, settle }) => el('li', {}, sentence, ' ', el('span', { class: 'pencil' }, settle))));
    const news = report ? likelyNews(report.pins, keeping.content.connector.pins) : [];
    all.hidden = news.length === 0;
    all.textContent = `Write down ${counted(news.length, 'likely pin')}`;
  }

  function takeLikely() {
    const news = likelyNews(report.pins, keeping.content.connector.pins);
    keeping.change(({ connector }) => { for (const label of news) connector.pins[label].role = structuredClone(report.pins[label].role); });
  }

  function PinRows(label) {
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const cells = columns.flatMap((column) => column.units.map((unit) => Cell(label, column, unit, trouble)));
    const guess = el('div', { class: 'guess' });
    const written = el('span', { class: 'pencil' });
    const rows = el('tbody', {},
      el('tr', {}, el('th', { scope: 'rowgroup' }, el('span', { class: 'unseen' }, 'Pin '), label), cells.map(({ place }) => place)),
      el('tr', { class: 'tells' }, el('td', { colspan: cells.length + 1 }, el('p', {}, el('span', { class: 'unseen' }, `Pin ${label} `), written), trouble, guess)));
    showRows();
    return { element: rows, update: showRows };

    function showRows() {
      const pin = keeping.content.connector.pins[label];
      const found = report?.pins[label];
      written.textContent = `written down: ${roleWords(pin.role)}`;
      for (const cell of cells) cell.update();
      fill(guess, found && keeping.content.probe?.[label] ? [
        el('p', {}, el('strong', {}, roleWords(found.role)), ` (${confidenceWords(found.confidence)}). `, found.reason, found.settle ? el('span', { class: 'pencil' }, ' ', found.settle) : null),
        isNews(found, pin) ? el('button', { type: 'button', on: { click: () => keeping.change(({ connector }) => { connector.pins[label].role = structuredClone(found.role); }) } },
          `Pin ${label} is ${roleWords(found.role)}`) : null,
      ] : null);
    }
  }

  function Cell(label, { key, words }, unit, trouble) {
    const [short, spoken, help] = UNITS[unit];
    const input = el('input', { inputmode: unit === 'ohms' ? 'text' : 'decimal', autocomplete: 'off', maxlength: 14, placeholder: short, 'aria-label': `Pin ${label}, ${words.toLowerCase()}, ${spoken}` });
    const current = () => cellWords(keeping.content.probe, label, key, unit);
    let before = '';
    input.addEventListener('focus', () => { before = current(); });
    input.addEventListener('input', () => {
      trouble.textContent = '';
      input.setAttribute('aria-invalid', String(!write(input.value)));
    });
    // Half of what was typed is nobody's reading: what cannot be read gives way to what stood there before.
    input.addEventListener('blur', () => {
      if (input.getAttribute('aria-invalid') === 'true') {
        trouble.textContent = `${words}: “${input.value.trim()}” was not taken; ${help}.`;
        write(before);
      }
      input.value = current();
      input.setAttribute('aria-invalid', 'false');
    });

    function write(typed) {
      let isGood = true;
      keeping.change((content) => { isGood = writeCell(content, label, key, unit, typed); });
      return isGood;
    }

    return {
      place: el('td', { 'data-condition': key }, input),
      update() {
        if (document.activeElement !== input) input.value = current();
      },
    };
  }
}
