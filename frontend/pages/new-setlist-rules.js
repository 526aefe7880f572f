/** new-setlist-rules.js: how a set begins. No DOM. */

/**
 * @param {string} date ISO
 * @param {import('../api.js').Envelope} [model] the set it begins as a copy of
 * @param {import('../api.js').Envelope} [rig] the newest rig
 */
export function firstSet(date, model, rig) {
  const id = model?.content.rig?.id ?? rig?.id;
  return { title: '', date, place: model?.content.place ?? '', state: 'planned', ...(id ? { rig: { id } } : {}), items: copiedItems(model), notes: '' };
}

/**
 * The pieces of another set, free again to follow their recipes: what was played is not held for the next evening.
 *
 * @param {import('../api.js').Envelope} [model]
 * @returns {Record<string, any>}
 */
export function copiedItems(model) {
  const setRig = model?.content.rig?.id;
  return Object.fromEntries(Object.entries(model?.content.items ?? {}).map(([key, { order, piece, recipe, rig, note }]) => [key, {
    order,
    piece,
    ...(recipe ? { recipe: { id: recipe.id } } : {}),
    ...(rig && rig.id !== setRig ? { rig: { id: rig.id } } : {}),
    note: note ?? '',
  }]));
}
