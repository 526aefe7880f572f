/**
 * level-strokes.js: the recording, an input a line, with the strokes that were found in it. A stroke that is wrong can be
 * put right: choose it, drag its ends or step them by arrow keys, say which string and how loud.
 *
 *   LevelStrokes(element, { report, notes: { 1: 'E5' }, inputOf: (string) => 1, onCorrected: (segments) => { … } });
 */
import { el, fill, svg } from '../dom.js';
import { LOUDNESSES, bare, newStroke, outline, tenth, widthForThumbs, withEnd } from '../level-rules.js';
import { noteName, number } from '../words-rules.js';

const LANE = 62;
const ARROW_SECONDS = 0.05;

/** @param {HTMLElement} element @param {{ report: any, notes: Record<string, string>, inputOf: (string: number) => number, onCorrected: (segments: any[]) => void }} state */
export function LevelStrokes(element, { report, notes, inputOf, onCorrected }) {
  const { waveform } = report;
  const seconds = waveform.secondsPerPoint * waveform.peaks[0].length;
  const loudest = Math.max(0.001, ...waveform.peaks.flat());
  let segments = bare(report.segments);
  let chosen = -1;
  let width = 0;
  const picture = el('div', { class: 'waveform' });
  const marks = el('div', { class: 'marks' });
  const editor = el('div', { class: 'stroke-editor' });
  element.classList.add('level-strokes');
  fill(element,
    el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Waveform and strokes' }, el('div', { class: 'sheet-of-sound' }, picture, marks)),
    el('p', { class: 'small pencil' }, 'One line an input; height by square root, so that soft strokes show. Choose a stroke to put it right.'),
    editor,
    el('details', {}, el('summary', {}, 'The strokes in numbers'), table()));
  // Wide enough for a thumb to choose a stroke; on a narrow screen it scrolls.
  picture.style.setProperty('min-width', `${widthForThumbs(segments, seconds)}px`);
  picture.style.setProperty('height', `${waveform.peaks.length * LANE + 22}px`);
  new ResizeObserver(([entry]) => {
    const next = Math.round(entry.contentRect.width);
    if (next === width || next === 0) return;
    width = next;
    fill(picture, drawing());
    drawMarks();
  }).observe(picture);
  drawEditor();

  function xOf(at) {
    return (at / seconds) * width;
  }

  function drawing() {
    const height = waveform.peaks.length * LANE + 22;
    const every = [0.5, 1, 2, 5, 10, 30, 60, 120, 300, 600].find((step) => xOf(step) >= 48) ?? 1200;
    const ticks = Array.from({ length: Math.floor(seconds / every) + 1 }, (unused, index) => index * every);
    return svg('svg', { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-labelledby': 'strokes-title strokes-words' },
      svg('title', { id: 'strokes-title' }, 'Waveform of the recording'),
      svg('desc', { id: 'strokes-words' }, `${waveform.peaks.length} inputs, ${number(Math.round(seconds * 10) / 10)} seconds, ${segments.length} strokes. The strokes stand in a table below.`),
      waveform.peaks.map((peaks, index) => [
        svg('line', { class: 'hair', x1: 0, x2: width, y1: LANE * (index + 0.5), y2: LANE * (index + 0.5) }),
        svg('path', { class: 'sound', d: outline(peaks, loudest, { width, middle: LANE * (index + 0.5), half: LANE * 0.44 }) }),
        svg('text', { class: 'which', x: 0, y: LANE * index + 14 }, String(index + 1)),
      ]),
      ticks.map((at) => svg('text', { class: 'tick', x: xOf(at), y: height - 4, 'text-anchor': at === 0 ? 'start' : xOf(at) > width - 16 ? 'end' : 'middle' }, `${number(at)} s`)));
  }

  function drawMarks() {
    fill(marks, segments.map((segment, index) => {
      const mark = el('div', { class: index === chosen ? 'stroke chosen' : 'stroke' },
        el('button', { type: 'button', 'aria-pressed': String(index === chosen), 'aria-label': `Stroke ${index + 1}: string ${segment.string}, ${segment.loudness}, from ${number(segment.from)} to ${number(segment.to)} seconds`, on: { click: () => choose(index) } },
          el('span', { class: 'loudness' }, segment.loudness[0])),
        index === chosen ? [edge(index, 'from'), edge(index, 'to')] : null);
      place(mark, segment);
      return mark;
    }));
  }

  function place(mark, segment) {
    mark.style.setProperty('left', `${xOf(segment.from)}px`);
    mark.style.setProperty('width', `${Math.max(3, xOf(segment.to) - xOf(segment.from))}px`);
    mark.style.setProperty('top', `${(inputOf(segment.string) - 1) * LANE}px`);
    mark.style.setProperty('height', `${LANE}px`);
  }

  function edge(index, end) {
    const handle = el('span', { class: `edge ${end}`, role: 'slider', tabindex: 0, 'aria-label': end === 'from' ? 'Start of the stroke' : 'End of the stroke' });
    const tell = () => {
      const at = segments[index][end];
      handle.setAttribute('aria-valuemin', '0');
      handle.setAttribute('aria-valuemax', String(seconds));
      handle.setAttribute('aria-valuenow', String(at));
      handle.setAttribute('aria-valuetext', `${number(at)} seconds`);
    };
    const move = (at) => {
      segments[index] = withEnd(segments[index], end, at, seconds);
      place(handle.parentElement, segments[index]);
      tell();
      drawEditor();
    };
    tell();
    handle.addEventListener('keydown', (event) => {
      const steps = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10 }[event.key];
      if (!steps) return;
      event.preventDefault();
      move(segments[index][end] + steps * ARROW_SECONDS);
    });
    handle.addEventListener('pointerdown', (event) => {
      event.preventDefault();
      handle.focus();
      handle.setPointerCapture(event.pointerId);
    });
    handle.addEventListener('pointermove', (event) => {
      if (!handle.hasPointerCapture(event.pointerId)) return;
      move(((event.clientX - picture.getBoundingClientRect().left) / width) * seconds);
    });
    return handle;
  }

  function choose(index) {
    chosen = chosen === index ? -1 : index;
    drawMarks();
    drawEditor();
    marks.querySelectorAll('.stroke > button')[index]?.focus();
  }

  function drawEditor() {
    const isChanged = JSON.stringify(bare(segments)) !== JSON.stringify(bare(report.segments));
    const segment = segments[chosen];
    fill(editor,
      segment ? el('div', { class: 'fields' },
        select('String', Object.keys(notes).map((string) => [string, `${string} · ${noteName(notes[string])}`]), String(segment.string), (value) => change({ string: Number(value) })),
        select('Loudness', LOUDNESSES.map((each) => [each, each]), segment.loudness, (value) => change({ loudness: value })),
        el('p', { class: 'times' }, `${tenth(segment.from)} to ${tenth(segment.to)}`, el('span', { class: 'unit' }, 's')),
        el('button', { type: 'button', class: 'quiet', on: { click: leaveOut } }, 'Leave this stroke out')) : null,
      el('div', { class: 'buttons' },
        el('button', { type: 'button', class: 'quiet', on: { click: add } }, 'Mark another stroke'),
        isChanged ? el('button', { type: 'button', class: 'inked', on: { click: () => onCorrected(bare(segments)) } }, 'Measure again with these strokes') : null));
  }

  function select(label, choices, value, onChoice) {
    return el('label', { class: 'field' }, el('span', { class: 'label' }, label),
      el('select', { on: { change: (event) => onChoice(event.target.value) } }, choices.map(([key, words]) => el('option', { value: key, selected: key === value }, words))));
  }

  function change(next) {
    const at = [...editor.querySelectorAll('select')].indexOf(/** @type {any} */ (document.activeElement));
    segments[chosen] = { ...segments[chosen], ...next };
    drawMarks();
    drawEditor();
    editor.querySelectorAll('select')[at]?.focus();
  }

  function leaveOut() {
    segments = segments.filter((unused, index) => index !== chosen);
    chosen = -1;
    drawMarks();
    drawEditor();
  }

  function add() {
    segments = [...segments, newStroke(segments, seconds)];
    chosen = segments.length - 1;
    drawMarks();
    drawEditor();
  }

  function table() {
    return el('div', { class: 'wide', tabindex: 0, role: 'region', 'aria-label': 'Strokes' }, el('table', {},
      el('thead', {}, el('tr', {}, ['String', 'Loudness', 'From (s)', 'To (s)', 'Level (dBFS)', 'Peak (dBFS)', 'Crest (dB)', 'Pitch (Hz)'].map((words) => el('th', { scope: 'col' }, words)))),
      el('tbody', {}, report.segments.map((each) => el('tr', {},
        el('th', { scope: 'row' }, String(each.string), each.note ? ` ${noteName(each.note)}` : ''),
        [each.loudness, number(Math.round(each.from * 100) / 100), number(Math.round(each.to * 100) / 100), tenth(each.rmsDbfs), tenth(each.peakDbfs), tenth(each.crestDb), tenth(each.hertz)].map((words) => el('td', {}, words)))))));
  }
}
