/**
 * adapter-drawing.js: the server's drawing, and which side of the plugs it shows.
 *
 *   const drawing = AdapterDrawing(element, { onSide: (side) => … });
 *   drawing.show(sheet.drawings);     // { mating, solder }: SVG as text
 */
import { el, fill } from '../dom.js';

/** [side, word, what it means]. */
const SIDES = [
  ['mating', 'Mating side', 'the face that meets the other plug'],
  ['solder', 'Solder side', 'the face where the wires are soldered: mirrored'],
];

/** @param {HTMLElement} element @param {{ onSide?: (side: string) => void }} [state] */
export function AdapterDrawing(element, { onSide = () => {} } = {}) {
  const place = el('div', { class: 'paper' });
  const buttons = SIDES.map(([side, word, meaning]) => el('button', { type: 'button', 'aria-pressed': 'false', 'data-side': side, on: { click: () => turn(side) } },
    el('strong', {}, word), el('span', { class: 'pencil' }, meaning)));
  let side = 'mating';
  let drawings = null;
  let drawn = '';
  element.classList.add('adapter-drawing');
  fill(element, el('div', { class: 'sides', role: 'group', 'aria-label': 'Seen from' }, buttons), place);
  update();
  return { element, show };

  function show(next) {
    drawings = next;
    update();
  }

  function turn(next) {
    side = next;
    update();
    onSide(side);
  }

  function update() {
    for (const button of buttons) button.setAttribute('aria-pressed', String(button.dataset.side === side));
    const text = drawings?.[side] ?? '';
    if (text === drawn) return;
    drawn = text;
    fill(place, text ? drawingOf(text, 'bench') : null);
  }
}

/**
 * A drawing as an element. Whatever is no plain picture is left out, whoever sent it.
 *
 * @param {string} text SVG
 * @param {string} name sets this drawing's ids apart from another's on the page
 * @returns {Element | null} null if it is no drawing
 */
export function drawingOf(text, name) {
  const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
  const root = parsed.documentElement;
  if (root.localName !== 'svg' || parsed.querySelector('parsererror')) return null;
  for (const each of parsed.querySelectorAll('script, foreignObject, a, use, image, animate, set, style')) each.remove();
  for (const each of [root, ...root.querySelectorAll('*')]) {
    for (const { name: attribute } of [...each.attributes]) if (/^(on|style$|href|xlink)/i.test(attribute)) each.removeAttribute(attribute);
    if (each.id) each.id = `${name}-${each.id}`;
  }
  const labelled = root.getAttribute('aria-labelledby');
  if (labelled) root.setAttribute('aria-labelledby', labelled.split(' ').map((id) => `${name}-${id}`).join(' '));
  return document.importNode(root, true);
}
