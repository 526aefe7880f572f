/**
 * way-fields.js: what stands between two pins, with its values where they stand.
 *
 *   const fields = WayFields(element, { read: () => route.via, edit: (change) => …, around });
 *   fields.update();
 *
 * edit(change) hands the way to be changed in place. around: { synth(), parts(), target(), lineKey(), hasInstrumentPin() }.
 */
import { el, fill } from '../dom.js';
import { pinsThat } from '../wiring-rules.js';
import { ohmsWords } from './adapter-rules.js';
import { roleWords } from './connector-rules.js';
import { DividerFinder } from './divider-finder.js';
import { Fact } from './editable.js';
import { parseOhms } from './route-rules.js';

const OHMS_HELP = 'Such as 220, 4.7k or 4k7, 1M.';

/**
 * @param {HTMLElement} element
 * @param {{ read: () => any, edit: (change: (via: any) => void) => void, around: any }} state
 */
export function WayFields(element, { read, edit, around }) {
  let drawn = '';
  let shows = [];
  update();
  return { element, update };

  function update() {
    const { via } = read();
    if (via !== drawn) {
      drawn = via;
      shows = [];
      fill(element);
      draw(via);
    }
    for (const show of shows) show();
  }

  function draw(via) {
    const list = el('dl', { class: 'facts' });
    if (via === 'preamp') {
      fact(list, 'gainDecibels', { label: 'Gain', kind: 'number', unit: 'dB', min: -60, max: 60 }, 0);
      fact(list, 'supplyMilliamps', { label: 'Draws', kind: 'number', unit: 'mA', min: 0, max: 1000, help: '0 if it has a battery of its own.' }, 0);
      ohms(list, 'inputOhms', 'Input', 'not known');
      supply(list, 'supplyPin', 'Fed from', 'none chosen');
      supply(list, 'negativeSupplyPin', 'Negative side', 'one rail only');
    }
    if (via === 'resistor') ohms(list, 'ohms', 'Resistor');
    if (via === 'divider') drawDivider(list);
    if (via === 'tied') {
      ohms(list, 'ohms', 'Through', 'a wire', 0);
    }
    if (list.childElementCount) element.prepend(list);
  }

  function drawDivider(list) {
    supply(list, 'supplyPin', 'Divides', around.hasInstrumentPin() ? 'the instrument pin' : 'which supply?');
    fact(list, 'targetVolts', { label: 'Should give', kind: 'number', unit: 'V', min: -60, max: 60, empty: 'any voltage in range' });
    const bands = el('div', { class: 'buttons bands' });
    list.lastElementChild.after(el('dd', { class: 'under' }, bands));
    shows.push(() => {
      const line = around.synth().controlLines?.[around.lineKey()];
      bands.parentElement.hidden = !line?.bands?.length;
      fill(bands, (line?.bands ?? []).map(({ fromVolts, toVolts, meaning }) => el('button', { type: 'button', class: 'quiet', on: { click: () => edit((each) => { each.targetVolts = middle(fromVolts, toVolts); }) } },
        `${meaning}: ${middle(fromVolts, toVolts)} V`)));
    });
    ohms(list, 'upperOhms', 'Upper');
    ohms(list, 'lowerOhms', 'Lower');
    const place = el('div');
    element.append(place);
    const finder = DividerFinder(place, { goal, onTake: ({ upperOhms, lowerOhms }) => edit((each) => Object.assign(each, { upperOhms, lowerOhms })) });
    shows.push(finder.update);
  }

  function goal() {
    const via = read();
    const supplyRole = around.synth().connector?.pins?.[via.supplyPin]?.role;
    if (supplyRole?.carries !== 'supply') return 'Say which supply pin is divided; its volts are needed.';
    if (via.targetVolts === undefined) return 'Say what it should give.';
    const line = around.synth().controlLines?.[around.lineKey()];
    return {
      supplyVolts: supplyRole.volts,
      targetVolts: via.targetVolts,
      supplyTolerancePercent: supplyRole.tolerancePercent ?? 5,
      maxMilliamps: Math.min(1, supplyRole.maxMilliamps ?? 1),
      maxRatingShare: 0.5,
      ...(line?.loadOhms ? { loadOhms: line.loadOhms } : {}),
      ...around.parts(),
    };
  }

  function fact(list, field, state, otherwise = undefined) {
    const part = Fact(list, { ...state, value: read()[field] ?? null, onEdit: (value) => edit((via) => { via[field] = value ?? otherwise; }) });
    shows.push(() => part.show({ value: read()[field] ?? null }));
  }

  function ohms(list, field, label, empty, otherwise = undefined) {
    const words = () => (read()[field] ? ohmsWords(read()[field]) : '');
    const part = Fact(list, {
      label, value: words(), empty: empty ?? 'how many ohms?', help: OHMS_HELP, maxLength: 16,
      check: (typed) => (typed.trim() === '' ? (empty ? null : 'A resistance is needed.') : isZero(typed) && otherwise === 0 ? null : parseOhms(typed) === null ? OHMS_HELP : null),
      onEdit: (typed) => edit((via) => { via[field] = parseOhms(typed) ?? otherwise; }),
    });
    shows.push(() => part.show({ value: words() }));
  }

  function supply(list, field, label, empty) {
    const choices = () => [['', empty], ...pinsThat(around.synth().connector, ({ carries }) => carries === 'supply')
      .map((pin) => [pin, `synth pin ${pin}, ${roleWords(around.synth().connector.pins[pin].role)}`])];
    const part = Fact(list, { label, kind: 'choice', value: read()[field] ?? '', empty, choices: choices(), onEdit: (value) => edit((via) => { via[field] = value || undefined; }) });
    shows.push(() => part.show({ value: read()[field] ?? '', choices: choices() }));
  }
}

function isZero(typed) {
  return /^0+([.,]0*)?$/.test(typed.trim());
}

function middle(from, to) {
  return Number(((from + to) / 2).toFixed(3));
}
