/**
 * save-bar.js: always in sight at the foot of the page: whether the notebook has what is written here, and the one button.
 *
 *   SaveBar(page.leaf, keeping, { saveWord: 'Save', askWhy: true, onSaved: (envelope) => { … } })   // appends itself
 *
 * Whoever may only read is told so, and may try values that stay on this device.
 * Ctrl+S or ⌘S saves as well. A conflict opens the dialog in which the player chooses, place by place.
 */
import { el, fill } from '../dom.js';
import { mayWrite, meet, onMe, readingOnlyWords } from '../me.js';
import { asSentence, moment } from '../words-rules.js';
import { ChangeList } from './change-list.js';
import { signInLink } from './signed-out.js';

/**
 * @param {HTMLElement} leaf
 * @param {import('../save.js').Keeping} keeping
 * @param {{ saveWord?: string, askWhy?: boolean, onSaved?: (envelope: import('../api.js').Envelope) => void, ready?: () => string | null, confirm?: () => Promise<boolean>, showsLog?: boolean }} [options]
 *   confirm: asked when the player saves; false leaves everything as it is
 *   onSaved: told of every save that goes through, also of one that had to wait for the notebook
 *   showsLog: the page shows the log entry that goes with the content; every other page says that there is one
 *   ready: a sentence on what is still missing before it can be saved, or null
 */
export function SaveBar(leaf, keeping, { saveWord = 'Save', askWhy = false, onSaved = () => {}, ready = () => null, confirm = async () => true, showsLog = false } = {}) {
  const words = el('p', { class: 'words', role: 'status' });
  const more = el('div', { class: 'more' });
  const why = el('input', { class: 'why', placeholder: 'why? (a few words, if you like)', 'aria-label': 'Why you changed it', maxlength: 1000, value: keeping.reason });
  const undo = el('button', { type: 'button', class: 'quiet' }, 'Throw away');
  const button = el('button', { type: 'button', class: 'inked' }, saveWord);
  const element = el('section', { class: 'save-bar', 'aria-label': 'Saving' }, more, el('div', { class: 'row' }, words, why, undo, button));
  /** Fetched when it is needed, which is when the notebook has just answered. */
  let dialog = null;
  let saved = keeping.envelope;
  let isPressed = false;
  leaf.append(element);

  why.addEventListener('input', () => {
    keeping.reason = why.value;
    keeping.touch();
  });
  button.addEventListener('click', press);
  undo.addEventListener('click', (event) => {
    if (undo.dataset.sure) {
      // The second half of a double click answers nothing that could have been read.
      if (event.detail > 1) return;
      keeping.discard();
      // A sheet that was never saved has nothing to go back to but a fresh page.
      if (keeping.baseRevision === 0) location.reload();
    }
    undo.dataset.sure = undo.dataset.sure ? '' : 'yes';
    update();
  });
  undo.addEventListener('blur', () => {
    undo.dataset.sure = '';
    update();
  });
  addEventListener('keydown', (event) => {
    if (event.key.toLowerCase() !== 's' || !(event.ctrlKey || event.metaKey) || event.altKey) return;
    // A page that was drawn anew after trouble has a bar of its own.
    if (!element.isConnected) return;
    event.preventDefault();
    if (!event.repeat) press();
  });
  addEventListener('beforeunload', (event) => {
    if (keeping.isDirty && !keeping.keptHere) event.preventDefault();
  });
  keeping.onChange(update);
  onMe(update);
  update();
  return { element, update };

  async function openDialog() {
    const { ConflictDialog } = await import('./conflict-dialog.js');
    dialog ??= ConflictDialog({ onChoice: async (choices) => asked(await keeping.choose(choices)) });
    dialog.open(keeping.problem.body.conflicts);
  }

  /** Once at a time: whoever is being asked something answers that first. */
  async function press() {
    if (isPressed || document.querySelector('dialog[open]')) return;
    isPressed = true;
    try {
      if (!mayWrite()) await meet();
      if (keeping.state === 'conflict') await openDialog();
      else if (keeping.isDirty && !ready() && await confirm()) asked(await keeping.save());
    } finally {
      isPressed = false;
    }
  }

  function isSignedOut() {
    return keeping.state === 'refused' && keeping.problem.type === 'sign-in-needed';
  }

  function isRefusedAtTheDoor() {
    return isSignedOut() || (keeping.state === 'refused' && keeping.problem.type === 'may-only-read');
  }

  // Written only when it differs, so that a screen reader hears it once.
  function say(next, isTrouble) {
    words.classList.toggle('unsafe', isTrouble);
    if (words.textContent !== next) words.textContent = next;
  }

  async function asked(envelope) {
    if (!envelope && keeping.state === 'conflict') await openDialog();
  }

  function update() {
    const { state, envelope } = keeping;
    if (envelope !== saved) {
      saved = envelope;
      // When everybody has heard of it: the page may draw itself anew.
      queueMicrotask(() => onSaved(envelope));
    }
    const missing = ready();
    element.dataset.state = state;
    if (document.activeElement !== why) why.value = keeping.reason;
    why.hidden = !askWhy || !keeping.isDirty || keeping.baseRevision === 0 || !mayWrite();
    undo.hidden = !keeping.isDirty || state === 'clean' || state === 'sending';
    undo.textContent = undo.dataset.sure ? 'Really throw away?' : 'Throw away';
    button.disabled = state === 'sending' || Boolean(missing) || (!keeping.isDirty && state !== 'conflict');
    // Somebody may have been let in meanwhile: what is typed can always be tried.
    button.hidden = !mayWrite() && !keeping.isDirty;
    button.textContent = { conflict: 'Choose', away: 'Try now', sending: 'Saving …' }[state] ?? (isRefusedAtTheDoor() || !mayWrite() ? 'Try again' : saveWord);
    say(sentence(keeping, missing), state === 'refused' && mayWrite());
    fill(more,
      isSignedOut() ? el('p', {}, 'First ', signInLink(), ', then try again.') : null,
      keeping.extra?.log && !showsLog ? el('p', {}, 'With it goes ', el('a', { href: `/new/log?rig=${encodeURIComponent(keeping.id)}` }, 'the rehearsal you began to write down'), '.') : null);
    if (state === 'merged' && keeping.mergedWith.length) {
      const list = el('div');
      ChangeList(list, keeping.mergedWith);
      fill(more, el('details', {}, el('summary', {}, 'What the other save had changed'), list));
    }
  }
}

function sentence(keeping, missing) {
  const kept = keeping.keptHere ? 'Kept on this device.' : 'This browser cannot keep drafts: do not close the page.';
  if (!mayWrite() && keeping.state !== 'sending') return keeping.isDirty ? `Not saved. ${readingOnlyWords()} ${kept}` : readingOnlyWords();
  switch (keeping.state) {
    case 'sending':
      return 'Saving …';
    case 'saved':
      return `Saved as revision ${keeping.envelope.revision}.`;
    case 'merged':
      return `Saved as revision ${keeping.envelope.revision}. Somebody else had saved meanwhile; both edits are kept.`;
    case 'away':
      return `The notebook is out of reach. ${kept} It is sent as soon as the notebook answers.`;
    case 'refused':
      if (keeping.problem.type === 'sign-in-needed') return `Not saved: your sign-in has ended. ${kept}`;
      return `Not saved. ${asSentence(keeping.problem.message + placeWords(keeping.problem.pointer))} ${kept}`;
    case 'conflict':
      return `Somebody else has changed the same place meanwhile. Nothing is lost: choose which to keep. ${kept}`;
    case 'draft':
      if (missing) return missing;
      return keeping.foundDraftFrom ? `Not saved yet: your words from ${moment(keeping.foundDraftFrom)}. ${kept}` : `Not saved yet. ${kept}`;
    default:
      if (missing) return missing;
      // Thrown away after somebody else had saved: what stands here is theirs.
      if (keeping.envelope && keeping.envelope.revision !== keeping.baseRevision) return `Revision ${keeping.baseRevision}`;
      return keeping.envelope ? `Revision ${keeping.envelope.revision}, ${moment(keeping.envelope.savedAt)}${keeping.envelope.savedBy ? `, ${keeping.envelope.savedBy}` : ''}` : 'Not saved yet.';
  }
}

function placeWords(pointer) {
  return pointer ? ` (${pointer.slice(1).replaceAll('/', ' › ')})` : '';
}
