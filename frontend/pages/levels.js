/** levels.js: the door to the level bench: which rig is to be measured. */
import { allSheets } from '../api.js';
import { el } from '../dom.js';
import { PageHead } from '../parts/page-head.js';
import { shortDay } from '../words-rules.js';

export async function show(page) {
  page.title('Level bench');
  const rigs = await allSheets('rigs');
  PageHead(page.leaf, {
    title: 'Level bench',
    lead: 'Record every open string soft, medium and loud. The bench finds the leaks, the noise and the room for a trigger on each string, and says which sensitivity to try.',
  });
  page.leaf.append(el('h2', {}, 'Which rig?'), rigs.length === 0
    ? el('p', {}, 'There is no rig yet. The bench needs one, to know the strings and the synth’s scale. ', el('a', { href: '/new/rigs' }, 'Make a rig.'))
    : el('ul', { class: 'ruled' }, rigs.map((rig) => el('li', {}, el('a', { class: 'line', href: `/levels/${rig.id}` },
      el('span', { class: 'name' }, rig.title),
      el('span', { class: 'aside' }, rig.content.levels ? `measured ${shortDay(rig.content.levels.measuredOn)}` : 'not measured yet'))))));
}
