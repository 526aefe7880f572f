/** stage.js: one piece at a time, dim and very large; the next one is a tap, an arrow key or a foot switch away. */
import { readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { sheetAddress } from '../places-rules.js';
import { readSounds, readSurroundings } from '../set-surroundings.js';
import { stageLines, stepsOf, turned } from './stage-rules.js';

const SWIPE_PIXELS = 60;

export async function show(page, { params: { setlistId } }) {
  document.documentElement.classList.add('stage');
  const [set, around] = await Promise.all([readSheet('setlists', setlistId), readSurroundings()]);
  const lines = stageLines(set.content, { ...around, sounds: await readSounds(set.content, around) });
  page.title(`${set.title}, on stage`);
  let index = turned(Number(location.hash.slice(1)) - 1 || 0, 0, lines.length);
  const leave = el('a', { class: 'leave', href: sheetAddress('setlists', setlistId), 'aria-label': `Leave the stage view of ${set.title}` }, set.title);
  const where = el('span', { class: 'where' });
  const whole = el('button', { type: 'button', class: 'quiet whole', on: { click: fillScreen } }, 'Full screen');
  const piece = el('article', { class: 'stage-piece', 'aria-live': 'polite' });
  const before = el('button', { type: 'button', class: 'turn before', on: { click: () => turn(-1) } });
  const next = el('button', { type: 'button', class: 'turn next', on: { click: () => turn(1) } });
  page.leaf.append(el('header', { class: 'stage-head' }, leave, where, document.fullscreenEnabled ? whole : null), piece, el('nav', { class: 'turns', 'aria-label': 'Turn' }, before, next));
  if (lines.length === 0) {
    fill(piece, el('h1', {}, 'No piece in this set'));
    before.hidden = next.hidden = true;
    return;
  }
  addEventListener('keydown', onKey);
  swipes(piece);
  keepAwake();
  draw();

  function draw() {
    const line = lines[index];
    where.textContent = `${line.position} of ${lines.length}`;
    fill(piece,
      line.newRig ? el('p', { class: 'new-rig' }, el('span', {}, 'Rig: '), line.newRig) : null,
      el('h1', {}, line.title),
      el('p', { class: 'stage-facts' }, [line.key, line.meter, line.tempo].filter(Boolean).map((fact) => el('span', {}, fact))),
      el('div', { class: 'strings', 'aria-hidden': 'true' }),
      line.hasSound ? el('div', { class: 'stage-sound' },
        line.slot ? el('p', { class: 'slot' }, el('span', { class: 'unseen' }, 'Slot '), line.slot) : null,
        el('div', {},
          el('p', { class: 'recipe' }, line.recipe),
          el('p', { class: 'layers-on' }, [line.straight, ...line.voices].filter(Boolean).join(' · ')),
          line.effects.length ? el('p', { class: 'chain pencil' }, line.effects.join(' → ')) : null)) : el('p', { class: 'pencil' }, 'No recipe for it in this set.'),
      [line.note, line.soundNotes, line.pieceNotes].filter(Boolean).map((note, place) => el('p', { class: place === 0 && line.note ? 'stage-note first' : 'stage-note' }, note)));
    fill(before, el('span', { 'aria-hidden': 'true' }, '←'), el('span', { class: 'unseen' }, `Back to ${lines[index - 1]?.title ?? 'the start'}`));
    before.disabled = index === 0;
    const following = lines[index + 1];
    fill(next, following
      ? [el('span', { class: 'pencil' }, 'next'), el('span', { class: 'name' }, following.title), following.slot ? el('span', { class: 'slot' }, following.slot) : null, el('span', { class: 'go', 'aria-hidden': 'true' }, '→')]
      : el('span', { class: 'pencil' }, 'That was the last one'));
    next.disabled = !following;
    history.replaceState(null, '', `#${line.position}`);
    scrollTo(0, 0);
  }

  function turn(steps) {
    const to = turned(index, steps, lines.length);
    if (to === index) return;
    index = to;
    draw();
  }

  function onKey(event) {
    if (event.ctrlKey || event.metaKey || event.altKey || document.querySelector('dialog[open]')) return;
    // Space and Enter press the button or link that has the focus; elsewhere they turn.
    if ((event.key === ' ' || event.key === 'Enter') && event.target.closest?.('button, a')) return;
    const steps = event.repeat ? 0 : stepsOf(event.key);
    if (!steps) return;
    event.preventDefault();
    turn(steps);
  }

  function swipes(element) {
    let from = null;
    element.addEventListener('pointerdown', (event) => {
      from = event.pointerType === 'touch' ? event : null;
    });
    element.addEventListener('pointerup', (event) => {
      if (!from) return;
      const [across, down] = [event.clientX - from.clientX, event.clientY - from.clientY];
      from = null;
      if (Math.abs(across) > SWIPE_PIXELS && Math.abs(across) > 2 * Math.abs(down)) turn(across < 0 ? 1 : -1);
    });
  }
}

/** The screen must not go dark between two pieces; a browser that cannot promise that is used all the same. */
async function keepAwake() {
  const ask = () => navigator.wakeLock?.request('screen').catch(() => {});
  await ask();
  document.addEventListener('visibilitychange', () => {
    if (!document.hidden) ask();
  });
}

function fillScreen() {
  if (document.fullscreenElement) document.exitFullscreen();
  else document.documentElement.requestFullscreen().catch(() => {});
}
