/**
 * exercise-rules.js: the exercise as systems of lines to read from. No DOM.
 */

/**
 * @typedef {{ string: number, note: string, atBeat: number, beats: number, loudness: string, bow: 'down' | 'up' | 'slur' | 'slide' }} Scripted
 * @typedef {{ title: string, instruction: string, firstBeat: number, beats: number, strokes: Scripted[] }} Passage
 */

/**
 * A passage cut into lines of so many beats; a note that goes on into the next line appears in both.
 *
 * @param {Passage} passage
 * @param {number} beatsPerLine
 * @returns {{ from: number, to: number, strokes: (Scripted & { goesOn: boolean, cameOver: boolean })[] }[]} beats from the passage's start
 */
export function linesOf(passage, beatsPerLine) {
  const lines = [];
  for (let from = 0; from < passage.beats; from += beatsPerLine) {
    const to = from + beatsPerLine;
    const strokes = passage.strokes
      .map((stroke) => ({ ...stroke, atBeat: stroke.atBeat - passage.firstBeat }))
      .filter((stroke) => stroke.atBeat < to && stroke.atBeat + stroke.beats > from + 1e-6)
      .map((stroke) => {
        const end = stroke.atBeat + stroke.beats;
        const at = Math.max(from, stroke.atBeat);
        return { ...stroke, atBeat: at, beats: Math.min(to, end) - at, cameOver: stroke.atBeat < from, goesOn: end > to };
      });
    lines.push({ from, to, strokes });
  }
  return lines;
}

/** Loudness is written where it changes, as in any part. @param {Scripted[]} strokes @returns {string[]} one for each stroke; empty where nothing is written */
export function loudnessMarks(strokes) {
  return strokes.map((stroke, index) => (index > 0 && strokes[index - 1].loudness === stroke.loudness ? '' : stroke.loudness));
}

/** What is to be played at this beat, counted from the count-in. @param {Passage[]} passages @param {number} countInBeats @param {number} beat */
export function whereAt(passages, countInBeats, beat) {
  if (beat < countInBeats) return { passage: -1, words: `count ${Math.floor(beat) + 1}` };
  const index = passages.findIndex((passage) => beat >= passage.firstBeat && beat < passage.firstBeat + passage.beats);
  if (index >= 0) return { passage: index, words: `${passages[index].title}, beat ${Math.floor(beat - passages[index].firstBeat) + 1}` };
  const next = passages.findIndex((passage) => beat < passage.firstBeat);
  if (next < 0) return { passage: -1, words: 'done' };
  return { passage: -1, words: `${passages[next].title} in ${Math.ceil(passages[next].firstBeat - beat)}` };
}
