/**
 * fault-list.js: the faults of a take in words, each with its reason, what mending it does, and the word to refuse that.
 *
 *   const list = FaultList(element, { onSelect: (id) => …, onRefuse: (id) => … });
 *   list.show(report);  list.select('ghost-17');
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { clock, countKinds, faultKind } from '../take-rules.js';
import { counted, noteName } from '../words-rules.js';
import { faultMark } from './fault-mark.js';

const AT_ONCE = 15;

/** @param {HTMLElement} element @param {{ onSelect: (id: string) => void, onRefuse: (id: string) => void }} doors */
export function FaultList(element, { onSelect, onRefuse }) {
  const kinds = el('select', { 'aria-label': 'Which faults', on: { change: () => { shown = AT_ONCE; update(); } } });
  const list = el('ol', { class: 'ruled fault-list' });
  const more = el('button', { type: 'button', on: { click: () => { shown += AT_ONCE; update(); } } });
  let report = null;
  let selected = '';
  let shown = AT_ONCE;
  fill(element, el('label', { class: 'which-faults' }, el('span', { class: 'unseen' }, 'Which faults'), kinds), list, el('div', { class: 'buttons' }, more));
  // Paper shows them all.
  addEventListener('beforeprint', () => update(Infinity));
  addEventListener('afterprint', () => update());
  return {
    show(next) {
      report = next;
      fillKinds();
      update();
    },
    select(id) {
      selected = id;
      const at = wanted().findIndex((fault) => fault.id === id);
      if (at < 0) kinds.value = '';
      shown = Math.max(shown, wanted().findIndex((fault) => fault.id === id) + 1);
      update();
    },
  };

  function fillKinds() {
    const counts = Object.entries(countKinds(report.faults));
    const before = kinds.value;
    fill(kinds, el('option', { value: '' }, `All ${counted(report.faults.length, 'fault')}`),
      counts.map(([kind, count]) => el('option', { value: kind }, `${count} ${count === 1 ? faultKind(kind).words : faultKind(kind).many}`)));
    kinds.value = counts.some(([kind]) => kind === before) ? before : '';
    kinds.hidden = report.faults.length === 0;
  }

  function wanted() {
    return (report?.faults ?? []).filter((fault) => !kinds.value || fault.kind === kinds.value);
  }

  function update(most = shown) {
    const all = wanted();
    keyedList(list, all.slice(0, most), (fault) => fault.id, row, (part, fault) => part.show(fault));
    more.hidden = all.length <= shown;
    more.textContent = `${counted(all.length - shown, 'more fault')}`;
  }

  function row(fault) {
    const button = el('button', { type: 'button', class: 'quiet', on: { click: () => onRefuse(fault.id) } });
    const repair = el('span', { class: 'repair' });
    const open = el('button', { type: 'button', class: 'quiet where', on: { click: () => onSelect(fault.id) } });
    const because = el('span', { class: 'because' });
    const onPaper = el('span', { class: 'only-print' });
    const element = el('li', {}, faultMark(fault.kind), open, onPaper, because, repair, button);
    const part = { element, show };
    show(fault);
    return part;

    function show(next) {
      fault = next;
      element.classList.toggle('chosen', fault.id === selected);
      element.classList.toggle('refused', fault.refused);
      fill(open, el('b', {}, faultKind(fault.kind).words), ` ${noteName(fault.note)} on string ${fault.string} at ${clock(fault.at, 1)}`);
      onPaper.textContent = open.textContent;
      because.textContent = fault.because;
      repair.textContent = fault.refused ? 'Left as played.' : fault.repair;
      button.textContent = fault.refused ? 'Mend it after all' : 'Leave as played';
      button.setAttribute('aria-label', `${button.textContent}: ${faultKind(fault.kind).words} at ${clock(fault.at, 1)} on string ${fault.string}`);
    }
  }
}
