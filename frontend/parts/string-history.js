/**
 * string-history.js: each string's sensitivity over time. A string at rest lies on its hairline, which stands for the
 * customary start; where it was set higher or lower, the line leaves it. The same stands beside it as a table.
 *
 *   StringHistory(element, { strings, notes: { 1: 'E5' }, customaryStart: 22 })   // strings as /api/rigs/{id}/strings gives them
 */
import { el, fill, svg } from '../dom.js';
import { noteName, number, shortDay } from '../words-rules.js';
import { gauge } from './string-board.js';
import { inWords, pointsOf, restAndReach, tellingRevisions } from './string-history-rules.js';

const LANE = 64;
const LEFT = 46;
const RIGHT = 30;

/**
 * @param {HTMLElement} element
 * @param {{ strings: Record<string, import('./string-history-rules.js').Entry[]>, notes: Record<string, string>, customaryStart?: number }} state
 */
export function StringHistory(element, { strings, notes, customaryStart }) {
  const numbers = Object.keys(strings).sort();
  const revisions = tellingRevisions(strings);
  const lanes = numbers.map((each) => pointsOf(strings[each], revisions));
  const { rest, reach } = restAndReach(lanes, customaryStart);
  const picture = el('div', { class: 'picture' });
  element.classList.add('string-history');
  fill(element,
    el('figure', {}, picture,
      el('figcaption', { class: 'small pencil' }, `Each hairline is ${number(rest)}${customaryStart === undefined ? '' : ', where players start'}. A dot is a change.`)),
    el('details', {}, el('summary', {}, 'The same in numbers'), table()));
  let width = 0;
  new ResizeObserver(([entry]) => {
    const next = Math.round(entry.contentRect.width);
    if (next === width || next === 0) return;
    width = next;
    fill(picture, drawing());
  }).observe(picture);

  function drawing() {
    const height = numbers.length * LANE + 30;
    const step = (width - LEFT - RIGHT) / Math.max(1, revisions.length - 1);
    const xOf = (index) => LEFT + index * step;
    const title = 'Sensitivity over time, string by string';
    return svg('svg', { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-labelledby': 'string-history-title string-history-words' },
      svg('title', { id: 'string-history-title' }, title),
      svg('desc', { id: 'string-history-words' }, lanes.map((points, index) => inWords(numbers[index], points)).join(' ')),
      lanes.map((points, index) => lane(points, numbers[index], LANE * (index + 0.5) + 6, xOf)),
      days(xOf, step, height - 6));
  }

  function lane(points, each, middle, xOf) {
    const yOf = (value) => middle - ((value - rest) / reach) * (LANE * 0.34);
    const known = points.map((point, index) => ({ ...point, x: xOf(index), y: point.value === null ? null : yOf(point.value) }));
    return svg('g', {},
      svg('line', { class: 'hair', x1: 0, x2: width, y1: middle, y2: middle, 'stroke-width': gauge(Number(each)) * 0.6 }),
      svg('text', { class: 'which', x: 0, y: middle - 5 }, notes[each] ? noteName(notes[each]) : each),
      svg('path', { class: 'course', d: path(known) }),
      known.map((point, index) => mark(point, index, known)));
  }

  // A value holds until the next revision: steps, not slopes.
  function path(points) {
    return points.map((point, index) => {
      if (point.y === null) return '';
      const before = points[index - 1];
      if (!before || before.y === null) return `M${point.x} ${point.y}`;
      return `H${point.x}V${point.y}`;
    }).join('');
  }

  function mark(point, index, points) {
    if (point.y === null) return null;
    const isLast = index === points.length - 1;
    if (!point.changed && !isLast && index !== 0) return null;
    const above = point.value >= rest;
    return [
      point.changed ? svg('circle', { class: 'change', cx: point.x, cy: point.y, r: 4.5 }) : null,
      svg('text', { class: isLast ? 'figure now' : 'figure', x: isLast ? point.x + 9 : point.x, y: isLast ? point.y + 5 : point.y + (above ? -9 : 20), 'text-anchor': isLast ? 'start' : 'middle' }, number(point.value)),
    ];
  }

  function days(xOf, step, y) {
    const every = Math.max(1, Math.ceil(64 / step));
    const all = lanes[0] ?? [];
    return all.map((point, index) => ((all.length - 1 - index) % every === 0
      ? svg('text', { class: 'day', x: xOf(index), y, 'text-anchor': index === all.length - 1 ? 'end' : 'middle', dx: index === all.length - 1 ? RIGHT : 0 }, shortDay(point.day).replace(/ \d{4}$/, ''))
      : null));
  }

  function table() {
    return el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Sensitivity per revision' }, el('table', {},
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'String'), (lanes[0] ?? []).map((point) => el('th', { scope: 'col' }, shortDay(point.day).replace(/ \d{4}$/, ''))))),
      el('tbody', {}, lanes.map((points, index) => el('tr', {},
        el('th', { scope: 'row' }, numbers[index], ' ', notes[numbers[index]] ? noteName(notes[numbers[index]]) : ''),
        points.map((point) => el('td', { class: point.changed ? 'changed' : null }, point.value === null ? '–' : number(point.value))))))));
  }
}
