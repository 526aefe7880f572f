/** synth.js: one synth. */
import { get } from '../api.js';
import { showGear } from '../parts/gear-page.js';
import { missingIn } from '../parts/connector-rules.js';
import { SynthForm } from '../parts/synth-form.js';
import { missingInSynth } from '../vocabulary-rules.js';

export async function show(page, { params: { id }, query }) {
  const shapes = (await get('/api/shapes')).items;
  await showGear(page, {
    kind: 'synths',
    id,
    revision: Number(query.get('revision')) || 0,
    draw: (leaf, keeping) => SynthForm(leaf, { keeping, shapes }),
    ready: (content) => missingInSynth(content) ?? missingIn(content.connector),
  });
}
