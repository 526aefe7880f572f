/** takes.js: the takes, newest first, and the place to bring a new one. */
import { allSheets } from '../api.js';
import { el, fill } from '../dom.js';
import { NewTake } from '../parts/new-take.js';
import { PageHead } from '../parts/page-head.js';
import { sheetAddress } from '../places-rules.js';
import { shortDay } from '../words-rules.js';

export async function show(page) {
  page.title('Takes');
  page.twoColumns();
  const [takes, rigs] = await Promise.all([allSheets('takes'), allSheets('rigs')]);
  PageHead(page.leaf, {
    title: 'Takes',
    lead: 'MIDI of your playing: count its faults, mend them, see whether new settings track better.',
    doors: [el('a', { class: 'button', href: '/takes/live' }, 'Play live'), el('a', { class: 'button', href: '/exercise' }, 'The exercise')],
  });
  const place = el('section');
  page.leaf.append(place);
  NewTake(place, { rigs });
  page.leaf.append(takes.length === 0
    ? el('p', { class: 'pencil' }, 'No take yet. Record the MIDI of your synth while you play, save it as a MIDI file, and bring it here.')
    : el('section', {}, el('h2', {}, 'Kept'), el('ul', { class: 'ruled' }, takes.map(line))));
  fill(page.margin,
    el('h2', {}, 'What is looked for'),
    el('p', {}, 'A held note that breaks in two, a slide heard as steps, ghosts on strings nobody touched, a wrong octave at a start, notes no string can give.'),
    el('p', {}, 'Real repeats, trills, scales and double stops are left alone. Every repair is listed, and you can refuse it; the recording itself is never changed.'));
}

function line(take) {
  return el('li', {}, el('a', { class: 'line', href: sheetAddress('takes', take.id) },
    el('span', { class: 'name' }, take.title),
    el('span', { class: 'aside' }, [take.extras?.rigTitle, shortDay(take.content.date ?? take.savedAt)].filter(Boolean).join(' · '))));
}
