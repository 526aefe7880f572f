/**
 * redrawn.js: a part of a page under a heading that is drawn anew after each change, without losing who types by keyboard.
 * What cannot be read is told in its place.
 *
 *   const part = Redrawn('Notebooks', async () => [nodes …]);
 *   page.leaf.append(part.element);
 *   await part.draw();
 */
import { el, fill } from '../dom.js';
import { NotRead } from './not-read.js';

/** @param {string} title @param {() => Promise<any[]>} drawn */
export function Redrawn(title, drawn) {
  const head = el('h2', { tabindex: -1 }, title);
  const body = el('div');
  return { element: el('section', {}, head, body), draw, redraw };

  async function draw() {
    try {
      fill(body, await drawn());
    } catch (failure) {
      NotRead(body, failure, draw);
    }
  }

  /** After something in it was done: whoever was there stays there, or comes to the heading if that place is gone. */
  async function redraw() {
    const { id } = document.activeElement ?? {};
    await draw();
    ((id && document.getElementById(id)) || head).focus();
  }
}
