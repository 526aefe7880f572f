/**
 * save.js: the working copy of one sheet, from opening it to the server's answer. No drawing: parts/save-bar.js shows it.
 *
 *   const keeping = await openSheet('rigs', id);            // with the draft of this device, if there is one
 *   const keeping = newSheet('pieces', { title: '' });      // nothing is sent before the first save
 *   keeping.change((content) => { content.title = 'Reel'; }); // kept on this device at once
 *   keeping.onChange(draw);                                  // after every change and every answer
 *   await keeping.save();                                    // never throws: the outcome is keeping.state
 */
import { Away, Problem, createSheet, readSheet, saveSheet } from './api.js';
import { dropDraft, findDraft, findNewDraft, keepDraft, playerName } from './drafts.js';
import { FORMAT, same } from './drafts-rules.js';
import { pauseMillis, withChoices } from './save-rules.js';

/** @typedef {import('./api.js').Envelope} Envelope */

/** Ids of the sheets that this page has open: their drafts are the page's own business. @type {Set<string>} */
export const openHere = new Set();

/**
 * One sheet with whatever this device still holds of it. When the server is away and there is a draft, the draft opens.
 *
 * @param {string} kind
 * @param {string} id
 */
export async function openSheet(kind, id) {
  openHere.add(id);
  const draft = findDraft(kind, id);
  try {
    return new Keeping(kind, id, await readSheet(kind, id), draft);
  } catch (failure) {
    if (failure instanceof Away && draft) return new Keeping(kind, id, null, draft);
    if (failure instanceof Problem && failure.status === 404 && draft?.baseRevision === 0) {
      return new Keeping(kind, id, null, draft);
    }
    throw failure;
  }
}

/**
 * A sheet that is not in the notebook yet. An unfinished one of the same kind is taken up again.
 *
 * @param {string} kind
 * @param {any} content what the page starts with
 */
export function newSheet(kind, content) {
  const unfinished = findNewDraft(kind);
  const keeping = new Keeping(kind, unfinished?.id ?? crypto.randomUUID(), null, unfinished);
  if (!unfinished) keeping.content = content;
  openHere.add(keeping.id);
  return keeping;
}

export class Keeping {
  #listeners = new Set();
  #retry = 0;
  #attempt = 0;
  #again = () => this.#sendAgain();

  /** @param {Envelope | null} envelope as the server has it @param {import('./drafts-rules.js').Draft | null} draft */
  constructor(kind, id, envelope, draft) {
    this.kind = kind;
    this.id = id;
    /** Newest state known to be in the notebook; null for a new sheet. */
    this.envelope = envelope;
    this.base = envelope?.content ?? draft?.base ?? null;
    this.baseRevision = envelope?.revision ?? draft?.baseRevision ?? 0;
    /** The working copy. Change it through change(). */
    this.content = structuredClone(this.base ?? {});
    /** Sent beside the content at the next save, such as { log }. */
    this.extra = {};
    this.reason = '';
    /** @type {import('./save-rules.js').SaveState} */
    this.state = 'clean';
    /** @type {Problem | null} */
    this.problem = null;
    /** What somebody else had changed, after a merge. @type {any[]} */
    this.mergedWith = [];
    /** False while this device cannot keep drafts. */
    this.keptHere = true;
    /** When the draft was last touched that was found on opening. */
    this.foundDraftFrom = '';
    if (draft && !(envelope && same(draft.content, envelope.content) && isEmpty(draft.extra))) this.#takeUp(draft);
    else if (draft) dropDraft(kind, id);
  }

  #takeUp(draft) {
    this.base = draft.base;
    this.baseRevision = draft.baseRevision;
    this.content = draft.content;
    this.extra = draft.extra;
    this.reason = draft.reason;
    this.foundDraftFrom = draft.touchedAt;
    this.state = 'draft';
    if (draft.wanted) this.#waitForServer();
  }

  /** Whether there is something the notebook does not have. */
  get isDirty() {
    return this.baseRevision === 0 || !isEmpty(this.extra) || !same(this.content, this.base);
  }

  /** @param {(content: any) => void} edit changes the working copy in place */
  change(edit) {
    edit(this.content);
    this.touch();
  }

  /** After content, extra or reason were changed: keep it here and tell whoever draws. */
  touch() {
    if (this.state !== 'conflict' && this.state !== 'away' && this.state !== 'sending') {
      this.state = this.isDirty ? 'draft' : 'clean';
    }
    if (this.isDirty) this.#keepHere(this.state === 'away');
    else dropDraft(this.kind, this.id);
    this.#tell();
  }

  /** Back to what the notebook has. A new sheet becomes empty of this device's memory. */
  discard() {
    this.#stopWaiting();
    dropDraft(this.kind, this.id);
    this.base = this.envelope?.content ?? this.base;
    this.baseRevision = this.envelope?.revision ?? this.baseRevision;
    this.content = structuredClone(this.base ?? {});
    this.extra = {};
    this.reason = '';
    this.problem = null;
    this.foundDraftFrom = '';
    this.state = 'clean';
    this.#tell();
  }

  /** @param {() => void} listener @returns {() => void} stops listening */
  onChange(listener) {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /** Sends the working copy. Never throws; look at `state` afterwards. @returns {Promise<Envelope | null>} null if it is not saved */
  async save() {
    if (this.state === 'sending') return null;
    this.#stopWaiting();
    const sent = structuredClone({ content: this.content, extra: this.extra });
    this.state = 'sending';
    this.problem = null;
    this.#keepHere(true);
    this.#tell();
    try {
      const envelope = await this.#send(sent);
      this.#accepted(envelope, sent);
      return envelope;
    } catch (failure) {
      this.#failed(failure);
      return null;
    } finally {
      this.#tell();
    }
  }

  #send({ content, extra }) {
    const body = { content, reason: this.reason, by: playerName(), ...extra };
    return this.baseRevision === 0
      ? createSheet(this.kind, { id: this.id, ...body })
      : saveSheet(this.kind, this.id, this.baseRevision, body);
  }

  #accepted(envelope, sent) {
    const typedSince = !same(this.content, sent.content);
    const wrote = this.content;
    this.envelope = envelope;
    this.base = envelope.content;
    this.baseRevision = envelope.revision;
    this.reason = '';
    this.foundDraftFrom = '';
    this.#attempt = 0;
    this.extra = same(this.extra, sent.extra) ? {} : this.extra;
    // Typed while it was under way: those words are a new draft on top of what was sent.
    this.content = typedSince ? wrote : structuredClone(envelope.content);
    this.mergedWith = envelope.extras?.mergedWith ?? [];
    this.state = envelope.extras?.merged ? 'merged' : 'saved';
    if (typedSince) {
      this.state = 'draft';
      this.base = sent.content;
      this.#keepHere(false);
    } else {
      dropDraft(this.kind, this.id);
    }
  }

  #failed(failure) {
    if (failure instanceof Away) {
      this.state = 'away';
      this.#waitForServer();
      return;
    }
    this.problem = failure instanceof Problem ? failure : new Problem(0, { detail: String(failure?.message ?? failure) });
    this.state = this.problem.type === 'edited-meanwhile' ? 'conflict' : 'refused';
    this.#keepHere(false);
  }

  /**
   * After a conflict: the player has chosen, place by place.
   *
   * @param {('yours' | 'theirs')[]} choices in the order of problem.body.conflicts
   */
  choose(choices) {
    const { merged, conflicts, current, currentContent } = this.problem.body;
    this.content = withChoices(merged, conflicts, choices);
    this.base = currentContent;
    this.baseRevision = current;
    this.state = 'draft';
    this.problem = null;
    return this.save();
  }

  #keepHere(wanted) {
    this.keptHere = keepDraft({
      format: FORMAT,
      kind: this.kind,
      id: this.id,
      baseRevision: this.baseRevision,
      base: this.base,
      content: this.content,
      extra: this.extra,
      reason: this.reason,
      touchedAt: new Date().toISOString(),
      wanted,
    });
  }

  #waitForServer() {
    this.state = 'away';
    this.#retry = setTimeout(this.#again, pauseMillis(this.#attempt++));
    addEventListener('online', this.#again);
    document.addEventListener('visibilitychange', this.#again);
  }

  #stopWaiting() {
    clearTimeout(this.#retry);
    removeEventListener('online', this.#again);
    document.removeEventListener('visibilitychange', this.#again);
  }

  #sendAgain() {
    if (this.state === 'away' && !document.hidden) this.save();
    else if (this.state === 'away') this.#retry = setTimeout(this.#again, pauseMillis(this.#attempt));
  }

  /** Stops asking a server that is away; the draft stays on this device. */
  leave() {
    this.#stopWaiting();
  }

  #tell() {
    for (const listener of this.#listeners) listener();
  }
}

function isEmpty(object) {
  return Object.keys(object).length === 0;
}
