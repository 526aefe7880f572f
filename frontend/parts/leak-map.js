/**
 * leak-map.js: how much of each bowed string is heard on the other inputs: the darker, the louder, with the number in it.
 *
 *   LeakMap(element, { report, notes: { 1: 'E5' } });
 */
import { el, fill, svg } from '../dom.js';
import { LOUDNESSES, shade, tenth } from '../level-rules.js';
import { noteName } from '../words-rules.js';

const ROW = 46;
const LEFT = 58;
const TOP = 30;

/** @param {HTMLElement} element @param {{ report: any, notes: Record<string, string> }} state */
export function LeakMap(element, { report, notes }) {
  let loudness = 'all';
  let width = 0;
  const picture = el('div', { class: 'picture' });
  const numbers = el('div');
  element.classList.add('leak-map');
  fill(element,
    el('fieldset', { class: 'switch' }, el('legend', { class: 'unseen' }, 'Which strokes'),
      ['all', ...LOUDNESSES].map((each) => el('label', { class: 'tick' },
        el('input', { type: 'radio', name: 'leak-loudness', value: each, checked: each === loudness, on: { change: () => show(each) } }), each))),
    el('figure', {}, picture, el('figcaption', { class: 'small pencil' }, 'Decibels below the bowed string’s own input. “≤” means no more than that: the leak is hidden in the noise. Figures that grow from soft to loud tell of a leak that is not linear.')),
    el('details', {}, el('summary', {}, 'The leaks as a table'), numbers));
  new ResizeObserver(([entry]) => {
    const next = Math.round(Math.min(entry.contentRect.width, 640));
    if (next === width || next === 0) return;
    width = next;
    update();
  }).observe(picture);

  function show(next) {
    loudness = next;
    update();
  }

  function leaks() {
    if (loudness === 'all') return { db: report.crosstalkDb, above: report.crosstalkAboveNoise };
    const { db, aboveNoise } = report.crosstalkDbByLoudness[loudness];
    return { db, above: aboveNoise };
  }

  function update() {
    const { db, above } = leaks();
    if (width) fill(picture, drawing(db, above));
    fill(numbers, table(db, above));
  }

  function words(leak, isAbove) {
    return leak === null || leak === undefined ? '–' : `${isAbove ? '' : '≤ '}${tenth(leak)}`;
  }

  function name(string) {
    return notes[string] ? noteName(notes[string]) : String(string);
  }

  function drawing(db, above) {
    const inputs = db[0]?.length ?? 0;
    const cell = (width - LEFT) / Math.max(1, inputs);
    const height = TOP + db.length * ROW;
    return svg('svg', { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-labelledby': 'leaks-title leaks-words' },
      svg('title', { id: 'leaks-title' }, `Leaks between strings, ${loudness === 'all' ? 'all strokes' : `${loudness} strokes`}`),
      svg('desc', { id: 'leaks-words' }, sentence(db)),
      Array.from({ length: inputs }, (unused, input) => svg('text', { class: 'head', x: LEFT + cell * (input + 0.5), y: 18, 'text-anchor': 'middle' }, `${width < 420 ? 'in' : 'input'} ${input + 1}`)),
      db.map((row, index) => [
        svg('text', { class: 'which', x: 0, y: TOP + ROW * (index + 0.5) + 6 }, `${index + 1} ${name(index + 1)}`),
        row.map((leak, input) => {
          const isOwn = leak === 0;
          const isKnown = leak !== null && leak !== undefined;
          return [
            svg('rect', { class: isOwn ? 'own' : isKnown ? `leak shade-${shade(leak)}` : 'leak unknown', x: LEFT + cell * input + 1, y: TOP + ROW * index + 1, width: cell - 2, height: ROW - 2 }),
            svg('text', { class: isOwn ? 'figure pencilled' : 'figure', x: LEFT + cell * (input + 0.5), y: TOP + ROW * (index + 0.5) + 5, 'text-anchor': 'middle' }, isOwn ? 'own' : words(leak, above[index]?.[input])),
          ];
        }),
      ]));
  }

  function sentence(db) {
    return db.map((row, index) => {
      const worst = row.map((leak, input) => ({ leak, input: input + 1 })).filter(({ leak }) => leak !== null && leak !== 0)
        .sort((one, other) => other.leak - one.leak)[0];
      return worst ? `String ${index + 1} leaks most into input ${worst.input}, ${tenth(worst.leak)} dB.` : `String ${index + 1}: not measured.`;
    }).join(' ');
  }

  function table(db, above) {
    return el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Leaks in decibels' }, el('table', {},
      el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, 'String bowed'), (db[0] ?? []).map((unused, input) => el('th', { scope: 'col' }, `Input ${input + 1}`)))),
      el('tbody', {}, db.map((row, index) => el('tr', {}, el('th', { scope: 'row' }, `${index + 1} ${name(index + 1)}`),
        row.map((leak, input) => el('td', {}, words(leak, above[index]?.[input]))))))));
  }
}
