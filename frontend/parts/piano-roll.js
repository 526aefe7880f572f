/**
 * piano-roll.js: a take over time. Each string is a lane that lies on its hairline, the open note. What came is an outline in
 * pencil, what was played is filled in ink, on one axis; a fault is a shape above its note, joined to it by a stem.
 *
 *   const roll = PianoRoll(element, { onSelect: (faultId) => … });
 *   roll.show(report);  roll.select('ghost-17');  roll.playAt(3.2);  roll.playAt(null);
 *
 * Drawn on a canvas, since a take may have ten thousand notes; the list of faults beside it says the same in words.
 */
import { el, fill } from '../dom.js';
import { clock, faultKind, inView, lanesOf, longest, moved, nextFault, showing, tickSeconds, zoomed } from '../take-rules.js';
import { noteName } from '../words-rules.js';
import { faultMark } from './fault-mark.js';
import { gauge } from './string-board.js';

const LANE = 92;
const SLIM_LANE = 78;
const LEFT = 40;
const AXIS = 26;
const MARKS = 22;
const OVERVIEW = 30;
const KEYS = 'Arrow keys left and right move, plus and minus zoom, 0 shows all, up and down go from fault to fault, R refuses or allows the chosen repair.';

/** @param {HTMLElement} element @param {{ onSelect: (id: string) => void, onRefuse: (id: string) => void, onSeek: (seconds: number) => void }} doors */
export function PianoRoll(element, { onSelect, onRefuse, onSeek }) {
  const canvas = el('canvas', { 'aria-hidden': 'true' });
  const overview = el('canvas', { class: 'overview', 'aria-hidden': 'true' });
  const words = el('p', { class: 'unseen', id: 'roll-keys' }, KEYS);
  const frame = el('div', { class: 'frame', tabindex: 0, role: 'group', 'aria-label': 'Piano roll', 'aria-describedby': 'roll-keys' }, canvas, overview);
  const button = (label, word, action) => el('button', { type: 'button', 'aria-label': label, title: label, on: { click: action } }, word);
  const chosen = el('div', { class: 'chosen-fault', role: 'status' });
  element.classList.add('piano-roll');
  fill(element,
    frame,
    words,
    el('div', { class: 'buttons' },
      button('Nearer', '+', () => zoom(0.5)),
      button('Further', '−', () => zoom(2)),
      el('button', { type: 'button', on: { click: all } }, 'All'),
      button('Fault before', '‹ fault', () => step(-1)),
      button('Next fault', 'fault ›', () => step(1))),
    chosen);

  let report = null;
  let lanes = [];
  let whole = { from: 0, to: 1 };
  let view = whole;
  let selected = '';
  let playing = null;
  let width = 0;
  let asked = 0;
  let longestBefore = 0;
  let longestAfter = 0;
  let faulty = new Set();
  /** Notes of each string, and when the next fault of its string comes: worked out once a report, not once a frame. */
  let byString = new Map();
  let nextOnString = new Map();
  let colours = {};
  const shapes = new Map();

  new ResizeObserver(([entry]) => {
    width = Math.round(entry.contentRect.width);
    draw();
  }).observe(frame);
  for (const query of ['(prefers-color-scheme: dark)', 'print']) {
    matchMedia(query).addEventListener('change', () => {
      colours = {};
      if (query === 'print') drawNow();
      else draw();
    });
  }
  frame.addEventListener('keydown', onKey);
  listenToPointer();
  return {
    show(next) {
      const first = report === null;
      report = next;
      lanes = lanesOf(report.strings, [...report.before, ...report.after]);
      longestBefore = longest(report.before);
      longestAfter = longest(report.after);
      faulty = new Set(report.faults.flatMap((fault) => fault.notes.slice(0, 1)));
      byString = new Map(lanes.map(({ string }) => [string, { before: report.before.filter((note) => note.string === string), after: report.after.filter((note) => note.string === string) }]));
      nextOnString = new Map();
      const coming = new Map();
      for (const fault of report.faults.toReversed()) {
        nextOnString.set(fault.id, coming.get(fault.string));
        coming.set(fault.string, fault.at);
      }
      const end = Math.max(1, ...[report.before.at(-1)?.on ?? 0], report.before.reduce((most, note) => Math.max(most, note.off), 0));
      whole = { from: 0, to: end + Math.max(0.2, end * 0.01) };
      if (first) view = { from: 0, to: Math.min(whole.to, Math.max(4, (width || 800) / 60)) };
      frame.setAttribute('aria-label', `Piano roll: ${report.notes.heard} notes heard, ${report.notes.kept} after mending, ${report.faults.length} faults`);
      tell();
      draw();
    },
    select(id) {
      selected = id;
      tell();
      const fault = report?.faults.find((each) => each.id === id);
      if (fault) view = showing(view, fault.at, whole);
      draw();
    },
    playAt(seconds) {
      playing = seconds;
      if (seconds !== null) view = showing(view, seconds, whole);
      draw();
    },
    get from() {
      return view.from;
    },
  };

  function draw() {
    if (!asked) asked = requestAnimationFrame(drawNow);
  }

  function drawNow() {
    cancelAnimationFrame(asked);
    asked = 0;
    if (!report || !width) return;
    readColours();
    const laneHeight = width < 560 ? SLIM_LANE : LANE;
    const pen = prepared(canvas, width, lanes.length * laneHeight + AXIS);
    drawTime(pen, lanes.length * laneHeight);
    lanes.forEach((lane, index) => drawLane(pen, lane, index * laneHeight, laneHeight));
    drawMarks(pen, laneHeight);
    if (playing !== null) {
      pen.fillStyle = colours.changedMark;
      pen.fillRect(xOf(playing) - 1, 0, 2, lanes.length * laneHeight);
    }
    drawOverview();
  }

  function prepared(surface, wide, high) {
    const ratio = Math.max(devicePixelRatio || 1, matchMedia('print').matches ? 3 : 1);
    surface.width = wide * ratio;
    surface.height = high * ratio;
    surface.style.setProperty('height', `${high}px`);
    const pen = surface.getContext('2d');
    pen.scale(ratio, ratio);
    pen.font = `12px ${colours.sans}`;
    return pen;
  }

  function readColours() {
    if (colours.ink) return;
    const style = getComputedStyle(document.documentElement);
    const role = (name) => style.getPropertyValue(name).trim();
    colours = {
      ink: role('--ink'), pencil: role('--pencil'), hairline: role('--hairline'), string: role('--string'), paper: role('--paper'),
      changed: role('--changed'), changedMark: role('--changed-mark'), wash: role('--changed-wash'), sans: getComputedStyle(element).fontFamily, serif: role('--serif'),
    };
  }

  function xOf(seconds) {
    return LEFT + ((seconds - view.from) / (view.to - view.from)) * (width - LEFT);
  }

  function secondsAt(x) {
    return view.from + ((x - LEFT) / (width - LEFT)) * (view.to - view.from);
  }

  function drawTime(pen, bottom) {
    const step = tickSeconds(view.to - view.from, Math.max(3, width / 90));
    pen.textAlign = 'center';
    for (let at = Math.ceil(view.from / step) * step; at <= view.to; at += step) {
      const x = Math.round(xOf(at)) + 0.5;
      pen.strokeStyle = colours.hairline;
      pen.lineWidth = 0.5;
      pen.beginPath();
      pen.moveTo(x, 0);
      pen.lineTo(x, bottom + 4);
      pen.stroke();
      pen.fillStyle = colours.pencil;
      if (x > LEFT + 8 && x < width - 14) pen.fillText(clock(at, step < 1 ? (step < 0.1 ? 2 : 1) : 0), x, bottom + 18);
    }
  }

  function yIn(lane, top, laneHeight) {
    const room = laneHeight - MARKS - 14;
    return (pitch) => top + laneHeight - 9 - ((pitch - lane.low) / Math.max(7, lane.high - lane.low)) * room;
  }

  function drawLane(pen, lane, top, laneHeight) {
    const yOf = yIn(lane, top, laneHeight);
    pen.strokeStyle = colours.string;
    pen.lineWidth = gauge(lane.string) * 0.6;
    pen.beginPath();
    pen.moveTo(0, yOf(lane.open));
    pen.lineTo(width, yOf(lane.open));
    pen.stroke();
    pen.save();
    pen.beginPath();
    pen.rect(LEFT - 2, top, width, laneHeight);
    pen.clip();
    drawBefore(pen, lane, yOf);
    drawAfter(pen, lane, yOf);
    pen.restore();
    pen.textAlign = 'left';
    pen.fillStyle = colours.ink;
    pen.font = `17px ${colours.serif}`;
    pen.fillText(noteName(report.strings[lane.string]), 0, yOf(lane.open) - 7);
    pen.font = `12px ${colours.sans}`;
  }

  function drawBefore(pen, lane, yOf) {
    const notes = byString.get(lane.string).before;
    const [first, last] = inView(notes, view, longestBefore);
    const plain = new Path2D();
    const wrong = new Path2D();
    for (let index = first; index < last; index++) {
      const note = notes[index];
      if (note.off < view.from) continue;
      const x = xOf(note.on);
      (faulty.has(note.id) ? wrong : plain).rect(x, yOf(note.noteNumber) - 4.5, Math.max(2, xOf(note.off) - x), 9);
    }
    pen.lineWidth = 1;
    pen.strokeStyle = colours.pencil;
    pen.stroke(plain);
    pen.fillStyle = colours.wash;
    pen.fill(wrong);
    pen.strokeStyle = colours.changed;
    pen.stroke(wrong);
  }

  function drawAfter(pen, lane, yOf) {
    const notes = byString.get(lane.string).after;
    const [first, last] = inView(notes, view, longestAfter);
    const bars = new Path2D();
    const slides = new Path2D();
    for (let index = first; index < last; index++) {
      const note = notes[index];
      if (note.off < view.from) continue;
      const x = xOf(note.on);
      const end = note.glide ? note.glide.from : note.off;
      bars.rect(x, yOf(note.noteNumber) - 2.5, Math.max(1.5, xOf(end) - x - 0.75), 5);
      if (note.glide) {
        slides.moveTo(xOf(note.glide.from) - 1, yOf(note.noteNumber));
        slides.lineTo(xOf(note.glide.to), yOf(note.noteNumber + note.glide.semitones));
      }
    }
    pen.fillStyle = colours.ink;
    pen.fill(bars);
    pen.strokeStyle = colours.ink;
    pen.lineWidth = 2.5;
    pen.stroke(slides);
  }

  function drawMarks(pen, laneHeight) {
    const tops = new Map(lanes.map((lane, index) => [lane.string, { lane, top: index * laneHeight }]));
    const lastWord = new Map();
    // The chosen one last: nothing may lie over its word.
    const seen = report.faults.filter((fault) => fault.at >= view.from && fault.at <= view.to && tops.has(fault.string));
    const crowded = seen.length > width;
    for (const fault of [...seen.filter((each) => each.id !== selected), ...seen.filter((each) => each.id === selected)]) {
      const { lane, top } = tops.get(fault.string);
      const x = xOf(fault.at);
      const y = top + 12;
      const isChosen = fault.id === selected;
      pen.strokeStyle = isChosen ? colours.ink : colours.changed;
      pen.lineWidth = isChosen ? 1.5 : 0.6;
      pen.beginPath();
      pen.moveTo(x, y + 6);
      pen.lineTo(x, yIn(lane, top, laneHeight)(fault.noteNumber) - 5);
      pen.stroke();
      // More faults than pixels: the stems alone tell where they crowd.
      if (crowded && !isChosen) continue;
      drawShape(pen, fault, x, y, isChosen);
      const word = `${faultKind(fault.kind).words}${fault.refused ? ', as played' : ''}`;
      const room = x - (lastWord.get(fault.string) ?? -100);
      const next = nextOnString.get(fault.id);
      if (isChosen || room > 8 && (next === undefined || xOf(next) - x > pen.measureText(word).width + 22)) {
        pen.textAlign = 'left';
        const wide = pen.measureText(word).width;
        if (isChosen) {
          pen.fillStyle = colours.paper;
          pen.fillRect(x + 9, y - 8, wide + 4, 16);
        }
        pen.fillStyle = isChosen ? colours.ink : colours.pencil;
        pen.fillText(word, x + 10, y + 4);
        lastWord.set(fault.string, x + 10 + wide);
      }
    }
  }

  function drawShape(pen, fault, x, y, isChosen) {
    const { path, open } = faultKind(fault.kind);
    if (!shapes.has(fault.kind)) shapes.set(fault.kind, new Path2D(path));
    const shape = shapes.get(fault.kind);
    pen.save();
    pen.translate(x, y);
    if (isChosen) pen.scale(1.25, 1.25);
    const isHollow = open || fault.refused;
    pen.fillStyle = isHollow ? colours.paper : colours.changedMark;
    pen.fill(shape);
    pen.strokeStyle = isChosen ? colours.ink : fault.refused ? colours.pencil : colours.changed;
    pen.lineWidth = open ? 2 : 1;
    pen.stroke(shape);
    pen.restore();
  }

  function drawOverview() {
    const pen = prepared(overview, width, OVERVIEW);
    const at = (seconds) => LEFT + (seconds / whole.to) * (width - LEFT);
    pen.fillStyle = colours.hairline;
    for (const lane of lanes) pen.fillRect(LEFT, 5 + (lane.string - 0.5) * (20 / lanes.length), width - LEFT, 0.5);
    pen.fillStyle = colours.changedMark;
    for (const fault of report.faults) pen.fillRect(at(fault.at) - 0.75, 5 + (fault.string - 1) * (20 / lanes.length), 1.5, 20 / lanes.length);
    pen.strokeStyle = colours.ink;
    pen.lineWidth = 1.5;
    pen.strokeRect(at(view.from) + 0.75, 1, Math.max(3, at(view.to) - at(view.from) - 1.5), OVERVIEW - 2);
  }

  /** The chosen fault in words under the roll, so that nobody has to look for it in the list. */
  function tell() {
    const fault = report?.faults.find((each) => each.id === selected);
    if (!fault) {
      fill(chosen);
      return;
    }
    fill(chosen,
      el('p', {}, faultMark(fault.kind), el('b', {}, faultKind(fault.kind).words), ` ${noteName(fault.note)} on string ${fault.string} at ${clock(fault.at, 1)}. ${fault.because} `,
        el('span', { class: 'pencil' }, fault.refused ? 'Left as played.' : fault.repair)),
      el('button', { type: 'button', on: { click: () => onRefuse(selected) } }, fault.refused ? 'Mend it after all' : 'Leave as played'));
  }

  function zoom(factor, around = (view.from + view.to) / 2) {
    view = zoomed(view, factor, around, whole);
    draw();
  }

  function all() {
    view = whole;
    draw();
  }

  function step(by) {
    const fault = report && nextFault(report.faults, selected, by, view);
    if (!fault) return;
    selected = fault.id;
    view = showing(view, fault.at, whole);
    tell();
    draw();
    onSelect(fault.id);
  }

  function onKey(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || !report) return;
    const span = view.to - view.from;
    const action = {
      ArrowLeft: () => { view = moved(view, -span * (event.shiftKey ? 0.5 : 0.1), whole); },
      ArrowRight: () => { view = moved(view, span * (event.shiftKey ? 0.5 : 0.1), whole); },
      Home: () => { view = moved(view, -whole.to, whole); },
      End: () => { view = moved(view, whole.to, whole); },
      '+': () => zoom(0.7),
      '=': () => zoom(0.7),
      '-': () => zoom(1 / 0.7),
      0: all,
      ArrowDown: () => step(1),
      ArrowUp: () => step(-1),
      r: () => selected && onRefuse(selected),
      R: () => selected && onRefuse(selected),
    }[event.key];
    if (!action) return;
    event.preventDefault();
    action();
    draw();
  }

  function listenToPointer() {
    const down = new Map();
    let start = null;
    canvas.addEventListener('pointerdown', (event) => {
      down.set(event.pointerId, event.offsetX);
      canvas.setPointerCapture(event.pointerId);
      start = { view, xs: [...down.values()], moved: false, y: event.offsetY };
    });
    canvas.addEventListener('pointermove', (event) => {
      if (!down.has(event.pointerId) || !start) return;
      down.set(event.pointerId, event.offsetX);
      const xs = [...down.values()];
      if (Math.abs(xs[0] - start.xs[0]) > 3) start.moved = true;
      const perPixel = (start.view.to - start.view.from) / (width - LEFT);
      if (xs.length === 1) {
        view = moved(start.view, (start.xs[0] - xs[0]) * perPixel, whole);
      } else if (start.xs.length > 1) {
        const factor = Math.abs(start.xs[0] - start.xs[1]) / Math.max(8, Math.abs(xs[0] - xs[1]));
        const middle = start.view.from + ((start.xs[0] + start.xs[1]) / 2 - LEFT) * perPixel;
        view = zoomed(start.view, factor, middle, whole);
      }
      draw();
    });
    for (const end of ['pointerup', 'pointercancel']) {
      canvas.addEventListener(end, (event) => {
        if (end === 'pointerup' && down.size === 1 && start && !start.moved) press(event.offsetX, event.offsetY);
        down.delete(event.pointerId);
        start = down.size ? { view, xs: [...down.values()], moved: true, y: 0 } : null;
      });
    }
    canvas.addEventListener('wheel', (event) => {
      if (event.ctrlKey || event.metaKey) {
        event.preventDefault();
        zoom(1.0015 ** event.deltaY, secondsAt(event.offsetX));
      } else if (event.shiftKey || Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        event.preventDefault();
        view = moved(view, ((event.deltaX || event.deltaY) / (width - LEFT)) * (view.to - view.from), whole);
        draw();
      }
    }, { passive: false });
    const jump = (event) => {
      const seconds = ((event.offsetX - LEFT) / (width - LEFT)) * whole.to;
      view = moved(view, seconds - (view.from + view.to) / 2, whole);
      draw();
    };
    overview.addEventListener('pointerdown', (event) => {
      overview.setPointerCapture(event.pointerId);
      jump(event);
    });
    overview.addEventListener('pointermove', (event) => {
      if (event.buttons) jump(event);
    });
  }

  /** Chooses the fault under the finger, or plays from there. */
  function press(x, y) {
    if (!report) return;
    const laneHeight = width < 560 ? SLIM_LANE : LANE;
    const string = lanes[Math.floor(y / laneHeight)]?.string;
    let nearest = null;
    for (const fault of report.faults) {
      const away = Math.abs(xOf(fault.at) - x);
      if (fault.string === string && away < 16 && (!nearest || away < nearest.away)) nearest = { fault, away };
    }
    if (nearest) {
      selected = nearest.fault.id;
      onSelect(selected);
      tell();
      draw();
      return;
    }
    onSeek(Math.max(0, secondsAt(x)));
  }
}

