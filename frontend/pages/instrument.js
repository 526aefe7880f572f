/** instrument.js: one instrument. */
import { get } from '../api.js';
import { showGear } from '../parts/gear-page.js';
import { InstrumentForm } from '../parts/instrument-form.js';
import { missingIn } from '../parts/connector-rules.js';

export async function show(page, { params: { id }, query }) {
  const shapes = (await get('/api/shapes')).items;
  await showGear(page, {
    kind: 'instruments',
    id,
    revision: Number(query.get('revision')) || 0,
    draw: (leaf, keeping) => InstrumentForm(leaf, { keeping, shapes }),
    ready: (content) => (content.title?.trim() ? missingIn(content.connector) : 'It needs a name.'),
  });
}
