/**
 * log-entry.js: one entry of the log, to read.
 *
 *   LogEntry(el('article'), envelope, { titles, onEdit: () => { … } })   // titles: Map from sheet id to title
 */
import { el, fill } from '../dom.js';
import { eventWords } from '../pages/log-rehearsal-rules.js';
import { KIND_WORDS, compareAddress, sheetAddress } from '../places-rules.js';
import { longDay } from '../words-rules.js';
import { feltMark } from './felt.js';

/** @param {HTMLElement} element @param {import('../api.js').Envelope} envelope @param {{ titles: Map<string, string>, onEdit: () => void }} state */
export function LogEntry(element, envelope, { titles, onEdit }) {
  const { date, event, felt, text, about } = envelope.content;
  element.id = envelope.id;
  element.classList.add('log-entry');
  fill(element,
    el('header', {},
      el('h3', {}, longDay(date)),
      el('span', { class: 'pencil' }, eventWords(event)),
      feltMark(felt)),
    text ? el('p', { class: 'told' }, text) : null,
    el('p', { class: 'about' },
      Object.values(about ?? {}).map(({ kind, reference }) => [
        el('a', { href: sheetAddress(kind, reference.id, reference.revision) }, titles.get(reference.id) ?? `the ${KIND_WORDS[kind] ?? 'sheet'}`, reference.revision ? el('span', { class: 'pencil' }, `, revision ${reference.revision}`) : null),
        kind === 'rigs' && reference.revision > 1 ? el('a', { href: compareAddress(kind, reference.id, reference.revision - 1, reference.revision) }, 'what changed') : null]),
      el('button', { type: 'button', class: 'quiet writes', on: { click: onEdit } }, 'edit', el('span', { class: 'unseen' }, ` what was written on ${longDay(date)}`))));
  return { element };
}
