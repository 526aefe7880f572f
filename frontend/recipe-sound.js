/**
 * recipe-sound.js: a recipe's sheet as the sound that parts/sound-editor.js reads and edits.
 */
import { editedPatch, givenBack, hasOwnWithin, isOwn, leftOut, mergePatch } from './recipe-rules.js';
import { read } from './save-rules.js';

const EMPTY = { straight: {}, voice: {}, effects: {} };

/**
 * @param {{ content: any, change?: (edit: (content: any) => void) => void }} keeping
 * @param {{ start: () => any, synth: any, piece: any, readOnly?: boolean }} around
 *   start: envelope of the starting point's revision it follows, or null; synth, piece: envelopes, or null
 */
export function recipeSound(keeping, { start, synth, piece, readOnly = false }) {
  const vocabulary = { ...EMPTY, ...synth?.content.vocabulary };
  const hasVocabulary = Object.values(vocabulary).some((group) => Object.keys(group).length > 0);
  const startSettings = () => start()?.content.settings;
  const patch = () => keeping.content.settings;
  let laid = null;
  // Laid over once for all the values of a page, not once for each.
  const settings = () => (laid ??= fillGroups(start() ? mergePatch(startSettings(), patch()) : { ...patch() }));
  return {
    vocabulary,
    hasVocabulary,
    readOnly,
    settings,
    /** To be called after the sheet was changed from elsewhere. */
    refresh() {
      laid = null;
    },
    value: (pointer) => read(settings(), pointer),
    bpm: () => piece?.content.tempoBpm,
    start: startSettings,
    startName: () => (start() ? `${start().title} ${start().revision}` : ''),
    own: (pointer) => (start() ? isOwn(patch(), pointer) : null),
    ownWithin: (pointer) => hasOwnWithin(patch(), pointer),
    leftOut: () => (start() ? leftOut(patch()) : []),
    giveBack: (pointer) => keeping.change((content) => { content.settings = givenBack(content.settings, pointer); }),
    edit(change) {
      keeping.change((content) => {
        if (start()) content.settings = editedPatch(startSettings(), content.settings, (whole) => change(fillGroups(whole)));
        else change(fillGroups(content.settings));
      });
    },
  };
}

function fillGroups(settings) {
  settings.straight ??= { on: true, parameters: {} };
  settings.voices ??= {};
  settings.effects ??= {};
  return settings;
}
