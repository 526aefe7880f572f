/** new-recipe-rules.js: how a recipe begins. No DOM. */
import { blankSettings } from '../recipe-rules.js';

/**
 * The same recipe on top of a starting point's newest revision, holding nothing of its own yet; or standing alone.
 *
 * @param {any} content
 * @param {import('../api.js').Envelope | null | undefined} start
 */
export function ontoStart(content, start) {
  if (!start) return { ...content, follows: undefined, settings: blankSettings() };
  return { ...content, synth: start.content.synth ?? content.synth, follows: { id: start.id, revision: start.revision }, settings: {} };
}
