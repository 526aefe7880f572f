/** stage-rules.js: what one needs to see of each piece while playing. No DOM. */
import { soundSummary } from '../setting-rules.js';
import { number } from '../words-rules.js';
import { changesRig, playingOrder, rigOf } from './setlist-rules.js';

/**
 * @param {any} set content
 * @param {{ pieces: Map<string, any>, rigs: Map<string, any>, sounds: Map<string, any>, vocabulary?: any }} around
 *   pieces and rigs: envelopes by id; sounds: whole settings with the recipe's title, by item key; absent where there is no recipe
 */
export function stageLines(set, { pieces, rigs, sounds, vocabulary }) {
  return playingOrder(set).map((key, index, order) => {
    const item = set.items[key];
    const { title = 'A piece that is no longer here', content: piece = {} } = pieces.get(item.piece) ?? {};
    const sound = sounds.get(key);
    const previous = set.items[order[index - 1]];
    return {
      key: piece.key ?? '',
      position: index + 1,
      title,
      meter: piece.meter ?? '',
      tempo: piece.tempoBpm ? `${number(piece.tempoBpm)} bpm` : '',
      tempoBpm: piece.tempoBpm,
      pieceNotes: piece.notes ?? '',
      note: item.note ?? '',
      recipe: sound?.title ?? '',
      ...soundSummary(sound?.settings, sound?.vocabulary ?? vocabulary),
      hasSound: Boolean(sound),
      soundNotes: sound?.settings.notes ?? '',
      newRig: changesRig(set, item, previous) ? rigs.get(rigOf(set, item).id)?.title ?? '' : '',
    };
  });
}

/** Where one turns to, held to the ends of the set. @param {number} index @param {number} steps @param {number} count */
export function turned(index, steps, count) {
  return Math.max(0, Math.min(count - 1, index + steps));
}

/** What a key of the keyboard, or of a foot switch that sends one, does: steps forward or back, or nothing. @param {string} key */
export function stepsOf(key) {
  if (['ArrowRight', 'ArrowDown', 'PageDown', ' ', 'Enter'].includes(key)) return 1;
  if (['ArrowLeft', 'ArrowUp', 'PageUp', 'Backspace'].includes(key)) return -1;
  return 0;
}
