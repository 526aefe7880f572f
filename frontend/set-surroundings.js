/** set-surroundings.js: everything a set points at, read together: pieces, recipes as they sound, rigs. */
import { allSheets, get, readSheet } from './api.js';

/** @returns {Promise<{ pieces: Map<string, any>, recipes: Map<string, any>, rigs: Map<string, any>, synths: Map<string, any> }>} newest envelopes by id */
export async function readSurroundings() {
  const [pieces, recipes, rigs, synths] = await Promise.all(['pieces', 'recipes', 'rigs', 'synths'].map((kind) => allSheets(kind)));
  return { pieces: byId(pieces), recipes: byId(recipes), rigs: byId(rigs), synths: byId(synths) };
}

/**
 * How each item of a set sounds: the exact revision where the set holds one, else the newest.
 *
 * @param {any} set content
 * @param {{ recipes: Map<string, any>, synths: Map<string, any> }} around
 * @returns {Promise<Map<string, { title: string, settings: any, vocabulary: any }>>} by item key
 */
export async function readSounds(set, { recipes, synths }) {
  const sounds = new Map();
  await Promise.all(Object.entries(set.items).map(async ([key, { recipe }]) => {
    if (!recipe) return;
    const [resolved, exact] = await Promise.all([
      get(`/api/recipes/${recipe.id}/resolved`, { revision: recipe.revision, settingsOnly: true }),
      recipe.revision && recipe.revision !== recipes.get(recipe.id)?.revision ? readSheet('recipes', recipe.id, recipe.revision) : recipes.get(recipe.id),
    ]);
    sounds.set(key, { title: exact?.title ?? '', settings: resolved.settings, vocabulary: synths.get(exact?.content.synth)?.content.vocabulary });
  }));
  return sounds;
}

function byId(sheets) {
  return new Map(sheets.map((sheet) => [sheet.id, sheet]));
}
