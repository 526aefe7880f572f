/**
 * reading-only.js: where somebody may only read, nothing that makes or changes something is offered. Links to /new/… and whatever has
 * the class "writes" go from every page at once; in their place, where a page would be bare without them, stands why.
 *
 *   watchRight();                                      // once for each page
 *   el('button', { class: 'writes', … }, 'Revoke')
 *   leaf.append(instead())                             // seen only by whoever may only read
 */
import { onAnswer } from '../api.js';
import { el } from '../dom.js';
import { mayWrite, meet, onMe, readingOnlyWords } from '../me.js';
import { PageHead } from './page-head.js';

/** Follows what may be done, also when it changes while the page is open. */
export function watchRight() {
  const mark = () => document.documentElement.classList.toggle('reading-only', !mayWrite());
  onMe(mark);
  onAnswer((problem) => {
    if (problem?.type === 'may-only-read' && mayWrite()) meet();
  });
  mark();
}

/** In place of a page that is there to make something. @param {{ leaf: HTMLElement, title: (words: string) => void }} page */
export function ReadingOnly({ leaf, title }) {
  title('Reading only');
  PageHead(leaf, { title: 'Reading only' });
  leaf.append(instead(),
    el('div', { class: 'buttons' }, el('a', { class: 'button', href: '/people' }, 'Open another notebook'), el('a', { class: 'button quiet', href: '/' }, 'To the first page')));
}

/** Why nothing is offered here, and whom to ask. */
export function instead() {
  const words = el('p', { class: 'readers-only' }, readingOnlyWords());
  onMe(() => { words.textContent = readingOnlyWords(); });
  return words;
}
