/**
 * log-entry-form.js: one entry of the log, to write.
 *
 *   LogEntryForm(element, keeping, { onSaved: (envelope) => { … } })
 */
import { el, fill } from '../dom.js';
import { EVENTS } from '../pages/log-rehearsal-rules.js';
import { Editable } from './editable.js';
import { Felt } from './felt.js';
import { SaveBar } from './save-bar.js';

/** @param {HTMLElement} element @param {import('../save.js').Keeping} keeping @param {{ onSaved: (envelope: any) => void }} doors */
export function LogEntryForm(element, keeping, { onSaved }) {
  const set = (field) => (value) => keeping.change((content) => { content[field] = value; });
  const area = el('textarea', { 'aria-label': 'What happened', placeholder: 'What happened?', maxlength: 20_000 });
  area.addEventListener('input', () => set('text')(area.value));
  const event = Editable(el('span'), { label: 'Occasion', kind: 'choice', choices: EVENTS, value: keeping.content.event, onEdit: set('event') });
  const date = Editable(el('span'), { label: 'Day', kind: 'date', value: keeping.content.date, check: (value) => (value ? null : 'A log entry needs a day.'), onEdit: set('date') });
  const place = el('div');
  element.classList.add('log-entry-form');
  fill(element, el('div', { class: 'occasion' }, event.element, date.element), area, place);
  const felt = Felt(place, { value: keeping.content.felt, onChoose: set('felt') });
  SaveBar(element, keeping, { saveWord: 'Write it down', onSaved, ready: () => (isBlank() ? 'Write what happened, or how it felt.' : null) });
  keeping.onChange(update);
  update();

  function isBlank() {
    const { text, felt: how } = keeping.content;
    return keeping.baseRevision === 0 && !text?.trim() && !how;
  }

  function update() {
    if (document.activeElement !== area) area.value = keeping.content.text ?? '';
    event.show({ value: keeping.content.event });
    date.show({ value: keeping.content.date });
    felt.show({ value: keeping.content.felt });
  }
}
