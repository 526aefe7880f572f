/**
 * movable-list.js: a list whose entries can be moved by mouse, touch and keyboard. Each <li data-key="…"> holds a mover.
 *
 *   const list = el('ol');  …  el('li', { 'data-key': key }, Mover('Warm strings'), …)
 *   MovableList(list, { onMove: (key, index) => { … draw again … } });
 *
 * Drag the handle; or, on the handle, the arrow keys (Home and End for the ends); or tap it for two buttons.
 * While it is dragged, Escape puts everything back.
 */
import { el } from '../dom.js';
import { say } from './status-line.js';

const EDGE_PIXELS = 90;

/** The handle of one entry. @param {string} name what is moved */
export function Mover(name) {
  const handle = el('button', { type: 'button', class: 'handle', 'aria-label': `Move ${name}`, title: 'Drag, or use the arrow keys' }, el('span', { 'aria-hidden': 'true' }));
  return el('span', { class: 'mover' }, handle,
    el('button', { type: 'button', class: 'up', 'aria-label': `${name}: up`, hidden: true }, '↑'),
    el('button', { type: 'button', class: 'down', 'aria-label': `${name}: down`, hidden: true }, '↓'));
}

/** @param {HTMLElement} list @param {{ onMove: (key: string, index: number) => void }} state */
export function MovableList(list, { onMove }) {
  list.classList.add('movable-list');
  let hasDragged = false;
  list.addEventListener('pointerdown', (event) => {
    const handle = handleOf(event);
    if (handle && event.button === 0) drag(handle, event);
  });
  list.addEventListener('keydown', (event) => {
    if (handleOf(event)) onKey(event);
  });
  list.addEventListener('click', (event) => {
    const button = /** @type {HTMLElement} */ (event.target).closest('.mover > button');
    if (!button || !list.contains(button)) return;
    if (button.classList.contains('up')) move(itemOf(button), -1, '.up');
    else if (button.classList.contains('down')) move(itemOf(button), 1, '.down');
    else if (!hasDragged) offerButtons(button.parentElement);
    hasDragged = false;
  });

  function items() {
    return /** @type {HTMLElement[]} */ ([...list.children]);
  }

  function itemOf(element) {
    return items().find((item) => item.contains(element));
  }

  function handleOf(event) {
    const handle = event.target.closest?.('.handle');
    return handle && list.contains(handle) ? handle : null;
  }

  function onKey(event) {
    const item = itemOf(event.target);
    const place = items().indexOf(item);
    const steps = { ArrowUp: -1, ArrowDown: 1, Home: -place, End: items().length - 1 - place }[event.key];
    if (steps === undefined) return;
    event.preventDefault();
    move(item, steps, '.handle');
  }

  function move(item, steps, focus) {
    const place = items().indexOf(item) + steps;
    if (steps === 0 || place < 0 || place >= items().length) return;
    const { key } = item.dataset;
    onMove(key, place);
    // Moving an element takes its focus away.
    items().find((each) => each.dataset.key === key)?.querySelector(`.mover ${focus}`)?.focus();
    say(`Now ${place + 1} of ${items().length}`);
  }

  function offerButtons(mover) {
    const isOpen = !mover.querySelector('.up').hidden;
    for (const button of list.querySelectorAll('.mover > :is(.up, .down)')) button.hidden = isOpen || button.parentElement !== mover;
  }

  function drag(handle, { pointerId, pageY }) {
    const item = itemOf(handle);
    const rows = items();
    const from = rows.indexOf(item);
    const boxes = rows.map((row) => {
      const { top, height } = row.getBoundingClientRect();
      return { middle: top + scrollY + height / 2, height };
    });
    let to = from;
    let at = pageY;
    let clientY = pageY - scrollY;
    let frame = 0;
    hasDragged = false;
    handle.setPointerCapture(pointerId);
    const stops = new AbortController();
    const on = (type, listener, target = handle) => target.addEventListener(type, listener, { signal: stops.signal });
    on('pointermove', (event) => {
      clientY = event.clientY;
      at = event.pageY;
      if (Math.abs(at - pageY) > 4) hasDragged = true;
      draw();
      if (!frame) frame = requestAnimationFrame(scrollAtEdges);
    });
    on('pointerup', () => end(true));
    on('pointercancel', () => end(false));
    on('keydown', (event) => {
      if (event.key === 'Escape') end(false);
    }, window);

    function draw() {
      if (!hasDragged) return;
      list.classList.add('dragging');
      item.classList.add('dragged');
      const middle = boxes[from].middle + at - pageY;
      to = boxes.filter((box, index) => index !== from && box.middle < middle).length;
      rows.forEach((row, index) => {
        if (index === from) row.style.translate = `0 ${at - pageY}px`;
        else if (index > from && index <= to) row.style.translate = `0 ${-boxes[from].height}px`;
        else if (index < from && index >= to) row.style.translate = `0 ${boxes[from].height}px`;
        else row.style.translate = '';
      });
    }

    function scrollAtEdges() {
      frame = 0;
      const pace = clientY < EDGE_PIXELS ? -8 : clientY > innerHeight - EDGE_PIXELS ? 8 : 0;
      if (!pace || !hasDragged) return;
      const before = scrollY;
      scrollBy(0, pace);
      at += scrollY - before;
      draw();
      if (scrollY !== before) frame = requestAnimationFrame(scrollAtEdges);
    }

    function end(holds) {
      stops.abort();
      cancelAnimationFrame(frame);
      list.classList.remove('dragging');
      item.classList.remove('dragged');
      for (const row of rows) row.style.translate = '';
      if (holds && to !== from) move(item, to - from, '.handle');
    }
  }
}
