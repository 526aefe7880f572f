/**
 * gear-news.js: a rig keeps the revisions of its instrument and synth as they were; when one was edited since, this says
 * so and offers to take the newest at the next save.
 *
 *   const news = GearNews(element, { keeping, newest: { instrument: envelope, synth: envelope } });
 */
import { el, fill } from '../dom.js';
import { compareAddress } from '../places-rules.js';

/**
 * @param {HTMLElement} element
 * @param {{ keeping: import('../save.js').Keeping, newest: Record<'instrument' | 'synth', import('../api.js').Envelope> }} state
 */
export function GearNews(element, { keeping, newest }) {
  update();
  return { update };

  function update() {
    fill(element, Object.entries(newest).map(([field, { id, kind, title, revision }]) => {
      const held = keeping.content[field].revision;
      if (!held || held >= revision) return null;
      return el('p', { class: 'gear-news' },
        `${title} was edited since (revision ${held}, now ${revision}). `,
        el('a', { href: compareAddress(kind, id, held, revision) }, 'See how'), ' ',
        el('button', { type: 'button', class: 'quiet', on: { click: () => keeping.change((content) => { content[field] = { id, revision }; }) } }, 'Take the newest'));
    }));
  }
}
