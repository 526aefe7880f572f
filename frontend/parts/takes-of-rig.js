/**
 * takes-of-rig.js: how a rig's faults moved when its settings moved: the takes played on each revision, string by string.
 *
 *   TakesOfRig(element, { id });   // stays empty while no take was played on it
 */
import { get } from '../api.js';
import { el, fill } from '../dom.js';
import { sheetAddress } from '../places-rules.js';
import { number, shortDay } from '../words-rules.js';
import { Trouble } from './trouble.js';

/** @param {HTMLElement} element @param {{ id: string }} state */
export async function TakesOfRig(element, { id }) {
  let told;
  try {
    told = await get(`/api/rigs/${id}/takes`);
  } catch (failure) {
    Trouble(element, failure);
    return;
  }
  if (told.revisions.length === 0) return;
  const strings = [...new Set(told.revisions.flatMap((revision) => revision.strings.map((string) => string.string)))].sort((one, other) => one - other);
  element.classList.add('takes-of-rig');
  fill(element,
    el('h2', {}, 'How its takes went'),
    told.moves.length ? el('ul', { class: 'moves' }, told.moves.map((move) => el('li', {}, move))) : null,
    told.moves.length ? el('p', { class: 'help' }, 'Other playing changes faults as well: play the same passage before you believe it.') : null,
    el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Faults a minute' }, el('table', {},
      el('caption', { class: 'small pencil' }, 'Faults a minute, with the sensitivity at that revision'),
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'String'), told.revisions.map((revision) => el('th', { scope: 'col' }, `revision ${revision.revision}`)))),
      el('tbody', {}, strings.map((string) => el('tr', {}, el('th', { scope: 'row' }, string), told.revisions.map((revision) => cell(revision, string))))))),
    el('ul', { class: 'ruled' }, told.revisions.toReversed().flatMap((revision) => revision.takes.map((take) => el('li', {}, el('a', { class: 'line', href: sheetAddress('takes', take.id) },
      el('span', { class: 'name' }, take.title),
      el('span', { class: 'aside' }, `tracking ${Math.round(take.trackingPercent)} · ${take.date ? `${shortDay(take.date)} · ` : ''}revision ${revision.revision}`)))))));
}

function cell(revision, which) {
  const string = revision.strings.find((each) => each.string === which);
  if (!string) return el('td', {}, '–');
  return el('td', {}, number(Math.round(string.faultsPerMinute * 10) / 10),
    string.sensitivity === undefined ? null : el('span', { class: 'unit' }, `at ${number(string.sensitivity)}`));
}
