/**
 * exercise-sheet.js: the exercise as something to play from: strings as lines, notes as long as they last, bowing as in any part.
 *
 *   const sheet = ExerciseSheet(element, { exercise, strings: ['E5', 'A4', 'D4', 'G3'] });
 *   sheet.playAt(12.5);   // beats from the count-in; null: not playing
 *   sheet.leave();        // when another one takes its place
 */
import { el, fill, svg } from '../dom.js';
import { linesOf, loudnessMarks } from '../exercise-rules.js';
import { noteNumber } from '../take-rules.js';
import { noteName } from '../words-rules.js';
import { gauge } from './string-board.js';

const ROW = 26;
const LEFT = 40;
const TOP = 26;

/** @param {HTMLElement} element @param {{ exercise: any, strings: string[] }} state */
export function ExerciseSheet(element, { exercise, strings }) {
  const parts = exercise.passages.map((passage, index) => {
    const lines = el('div', { class: 'lines' });
    const part = el('section', { class: 'passage' },
      el('h2', {}, `${index + 1}. ${passage.title}`), el('p', {}, passage.instruction), lines);
    return { passage, lines, part };
  });
  let width = 0;
  let cursors = [];
  element.classList.add('exercise-sheet');
  fill(element, parts.map(({ part }) => part));
  const observer = new ResizeObserver(([entry]) => resize(Math.round(entry.contentRect.width)));
  observer.observe(element);
  // Paper is as wide as a leaf, whatever the screen was.
  const paper = matchMedia('print');
  const turn = ({ matches }) => resize(matches ? 660 : Math.round(element.getBoundingClientRect().width));
  paper.addEventListener('change', turn);
  return {
    leave() {
      observer.disconnect();
      paper.removeEventListener('change', turn);
    },
    playAt(beat) {
      for (const { line, from, to, perBeat } of cursors) {
        const isHere = beat !== null && beat >= from && beat < to;
        line.toggleAttribute('hidden', !isHere);
        if (isHere) line.setAttribute('transform', `translate(${LEFT + (beat - from) * perBeat} 0)`);
        if (isHere && Math.abs(beat - from) < 0.1) line.closest('svg').scrollIntoView({ block: 'nearest' });
      }
    },
  };

  function resize(next) {
    if (next === width || next === 0) return;
    width = next;
    cursors = [];
    const beatsPerLine = width < 560 ? 8 : 16;
    for (const { passage, lines } of parts) fill(lines, linesOf(passage, beatsPerLine).map((line) => drawing(passage, line)));
  }

  function drawing(passage, { from, to, strokes }) {
    const perBeat = (width - LEFT - 6) / (to - from);
    const xOf = (beat) => LEFT + (beat - from) * perBeat;
    const used = strings.map((_, index) => index + 1);
    const height = TOP + used.length * ROW + 20;
    const yOf = (string) => TOP + (string - 0.5) * ROW;
    const marks = loudnessMarks(strokes);
    const cursor = svg('line', { class: 'cursor', y1: TOP - 6, y2: height - 18, hidden: true });
    cursors.push({ line: cursor, from: passage.firstBeat + from, to: passage.firstBeat + Math.min(to, passage.beats), perBeat });
    return svg('svg', { viewBox: `0 0 ${width} ${height}`, width, height, role: 'img', 'aria-label': inWords(strokes) },
      used.map((string) => [
        svg('line', { class: 'hair', x1: 0, x2: width, y1: yOf(string), y2: yOf(string), 'stroke-width': gauge(string) * 0.6 }),
        svg('text', { class: 'which', x: 0, y: yOf(string) - 5 }, noteName(strings[string - 1]))]),
      Array.from({ length: Math.min(to, passage.beats) - from }, (_, beat) => svg('line', { class: beat % 4 ? 'beat' : 'beat first', x1: xOf(from + beat), x2: xOf(from + beat), y1: TOP, y2: height - 20 })),
      strokes.map((stroke, index) => note(stroke, strokes, index, xOf, yOf, perBeat)),
      strokes.map((stroke, index) => (marks[index] ? svg('text', { class: 'loudness', x: xOf(stroke.atBeat), y: height - 4 }, marks[index]) : null)),
      cursor);
  }

  function note(stroke, strokes, index, xOf, yOf, perBeat) {
    const x = xOf(stroke.atBeat);
    const y = yOf(stroke.string);
    const isOpen = stroke.note === strings[stroke.string - 1];
    const before = strokes[index - 1];
    const joined = before && before.string === stroke.string && (stroke.bow === 'slur' || stroke.bow === 'slide');
    return [
      svg('rect', { class: 'note', x: x + 1, y: y - 4, width: Math.max(3, stroke.beats * perBeat - 2), height: 8, rx: 1 }),
      stroke.cameOver || (stroke.bow !== 'down' && stroke.bow !== 'up') ? null : bow(stroke.bow, x + 6),
      joined && stroke.bow === 'slur' ? svg('path', { class: 'slur', d: `M${xOf(before.atBeat) + 6} ${y + 6}Q${(xOf(before.atBeat) + x) / 2 + 5} ${y + 13} ${x + 4} ${y + 6}` }) : null,
      joined && stroke.bow === 'slide' ? svg('path', { class: 'slide', d: `M${x - perBeat / 2} ${y + (noteNumber(stroke.note) > noteNumber(before.note) ? 9 : -9)}L${x} ${y}` }) : null,
      isOpen ? null : svg('text', { class: 'finger', x: x + 3, y: y - 7 }, noteName(stroke.note)),
    ];
  }

  /** Down-bow: an open square; up-bow: a V. Above the system, as in any string part. */
  function bow(which, x) {
    return svg('path', { class: 'bow', d: which === 'down' ? `M${x - 4} 14v-8h8v8M${x - 4} 7.5h8` : `M${x - 4} 6l4 9 4-9` });
  }
}

function inWords(strokes) {
  return strokes.map((stroke) => `${noteName(stroke.note)} on string ${stroke.string}, ${stroke.beats > 1.5 ? `${Math.round(stroke.beats)} beats` : stroke.beats > 0.7 ? 'a beat' : 'half a beat'}, ${{ down: 'down-bow', up: 'up-bow', slur: 'slurred', slide: 'slid to' }[stroke.bow]}`).join('; ');
}
