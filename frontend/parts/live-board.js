/**
 * live-board.js: strings across the page with what each sounds now, and the last seconds running out to the left.
 *
 *   const board = LiveBoard(element, { strings });
 *   board.hear(notes, now);        // what live-rules.js gave back; milliseconds, as performance.now()
 */
import { el, fill } from '../dom.js';
import { faultKind, nameOf } from '../take-rules.js';
import { faultMark } from './fault-mark.js';
import { StringBoard } from './string-board.js';

const SHOWN_MILLIS = 8000;

/** @param {HTMLElement} element @param {{ strings: Record<string, string> }} state */
export function LiveBoard(element, { strings }) {
  const rows = new Map();
  const counts = new Map();
  const shown = [];
  let drawing = 0;
  element.classList.add('live-board');
  element.replaceChildren();
  const board = StringBoard(element, { label: 'What each string sounds' });
  for (const [number, open] of Object.entries(strings)) {
    const canvas = el('canvas', { 'aria-hidden': 'true' });
    const now = el('b', { class: 'now' }, '–');
    const flags = el('span', { class: 'flags' });
    board.row(number, open, [canvas], [now, flags]);
    rows.set(Number(number), { canvas, now, flags });
    counts.set(Number(number), {});
  }
  return { hear };

  function hear(notes) {
    for (const note of notes) {
      if (!shown.includes(note)) shown.push(note);
      if (note.flag && !note.counted) {
        note.counted = true;
        const kinds = counts.get(note.string);
        kinds[note.flag] = (kinds[note.flag] ?? 0) + 1;
        fill(rows.get(note.string).flags, Object.entries(kinds).map(([kind, count]) => el('span', { title: faultKind(kind).words }, faultMark(kind), ` ${count} `, el('span', { class: 'unseen' }, faultKind(kind).words))));
      }
      const row = rows.get(note.string);
      row.now.textContent = note.off === null ? nameOf(note.note) : '–';
      row.now.classList.toggle('changed', Boolean(note.flag) && note.off === null);
    }
    if (!drawing) drawing = requestAnimationFrame(draw);
  }

  function draw() {
    drawing = 0;
    const at = performance.now();
    while (shown.length && shown[0].off !== null && at - shown[0].off > SHOWN_MILLIS) shown.shift();
    const style = getComputedStyle(document.documentElement);
    const ink = style.getPropertyValue('--ink').trim();
    const amber = style.getPropertyValue('--changed-mark').trim();
    for (const [number, { canvas }] of rows) {
      const wide = canvas.clientWidth;
      const high = canvas.clientHeight;
      canvas.width = wide * devicePixelRatio;
      canvas.height = high * devicePixelRatio;
      const pen = canvas.getContext('2d');
      pen.scale(devicePixelRatio, devicePixelRatio);
      for (const note of shown) {
        if (note.string !== number) continue;
        const x = wide * (1 - (at - note.on) / SHOWN_MILLIS);
        const end = wide * (1 - (at - (note.off ?? at)) / SHOWN_MILLIS);
        const thick = 3 + (note.velocity / 127) * 9;
        pen.fillStyle = note.flag ? amber : ink;
        pen.fillRect(x, high / 2 - thick / 2, Math.max(2, end - x - 1), thick);
        if (note.flag) mark(pen, note.flag, x, amber);
      }
    }
    if (shown.length) drawing = requestAnimationFrame(draw);
  }

  function mark(pen, kind, x, amber) {
    pen.save();
    pen.translate(x, 9);
    pen.strokeStyle = amber;
    pen.fillStyle = amber;
    const shape = new Path2D(faultKind(kind).path);
    if (faultKind(kind).open) {
      pen.lineWidth = 2;
      pen.stroke(shape);
    } else pen.fill(shape);
    pen.restore();
  }
}
