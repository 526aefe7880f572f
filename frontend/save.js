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
import { carriedOver, pauseMillis, withChoices } from './save-rules.js';

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
  /** The draft that this page has put into the store or found there. @type {import('./drafts-rules.js').Draft | null} */
  #stored = null;
  /** What a refused save met there, newer than `envelope`. @type {{ revision: number, content: any } | null} */
  #met = null;
  #storeChanged = () => this.#keepAgain();

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
    /** What was sent beside the content at the last save that went through. @type {Record<string, any>} */
    this.savedExtra = {};
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
    else if (draft) dropDraft(draft);
    addEventListener('storage', this.#storeChanged);
  }

  #takeUp(draft) {
    this.#stored = draft;
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
    if (this.state !== 'away' && this.state !== 'sending') {
      // What was told of a conflict does not hold what was typed after it: the next save asks anew.
      this.state = this.isDirty ? 'draft' : 'clean';
      this.problem = null;
    }
    if (this.isDirty) this.#keepHere(this.state === 'away');
    else this.#drop();
    this.#tell();
  }

  /** Back to what the notebook has. Of a new sheet only the draft goes: there is nothing to go back to, the page has to begin anew. */
  discard() {
    this.#stopWaiting();
    this.#drop();
    if (this.baseRevision === 0 && !this.envelope) return;
    const newest = this.#met ?? this.envelope;
    this.base = newest?.content ?? this.base;
    this.baseRevision = newest?.revision ?? this.baseRevision;
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
    const sent = structuredClone({ content: this.content, extra: this.extra, reason: this.reason });
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
      if (this.state !== 'conflict' || same(this.content, sent.content)) return null;
      // Typed while it was under way: the player chooses with these words in it.
      this.state = 'draft';
      return await this.save();
    } finally {
      this.#tell();
    }
  }

  async #send({ content, extra, reason }) {
    const body = { content, reason, by: playerName(), ...extra };
    if (this.baseRevision > 0) return saveSheet(this.kind, this.id, this.baseRevision, body);
    try {
      return await createSheet(this.kind, { id: this.id, ...body });
    } catch (failure) {
      if (!(failure instanceof Problem) || failure.pointer !== '/id') throw failure;
      await this.#standOnFirst(failure);
      return saveSheet(this.kind, this.id, this.baseRevision, body);
    }
  }

  /** It was made before: the answer was lost, or another tab has sent the same draft. What stands here goes on top of that. */
  async #standOnFirst(refusal) {
    try {
      const first = await readSheet(this.kind, this.id, 1);
      this.base = first.content;
      this.baseRevision = first.revision;
    } catch (failure) {
      throw failure instanceof Problem && failure.status === 404 ? refusal : failure;
    }
  }

  #accepted(envelope, sent) {
    const typedSince = !same({ content: this.content, extra: this.extra }, { content: sent.content, extra: sent.extra });
    const { merged = false, mergedWith = [] } = envelope.extras ?? {};
    const carried = carriedOver(sent.content, this.content, envelope.content);
    this.envelope = envelope;
    this.#met = null;
    // Typed where the merge brought somebody else's value: the next save starts where this one did, so that the player is asked.
    if (carried || !merged) {
      this.base = envelope.content;
      this.baseRevision = envelope.revision;
    }
    this.content = carried ?? this.content;
    this.savedExtra = sent.extra;
    this.extra = same(this.extra, sent.extra) ? {} : this.extra;
    this.reason = this.reason === sent.reason ? '' : this.reason;
    this.foundDraftFrom = '';
    this.#attempt = 0;
    this.mergedWith = mergedWith;
    this.state = merged ? 'merged' : 'saved';
    if (typedSince) {
      this.state = 'draft';
      this.#keepHere(false);
    } else {
      this.#drop();
    }
  }

  #failed(failure) {
    if (failure instanceof Away) {
      this.#waitForServer();
      this.#keepHere(true);
      return;
    }
    this.problem = failure instanceof Problem ? failure : new Problem(0, { detail: String(failure?.message ?? failure) });
    this.state = this.problem.type === 'edited-meanwhile' ? 'conflict' : 'refused';
    if (this.state === 'conflict') this.#met = { revision: this.problem.body.current, content: this.problem.body.currentContent };
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
    this.#stored = structuredClone({
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
    this.keptHere = keepDraft(this.#stored);
  }

  #drop() {
    if (this.#stored) dropDraft(this.#stored);
    this.#stored = null;
  }

  /** Another tab with this sheet has dropped its own draft, which had taken the place of this one. */
  #keepAgain() {
    if (this.#stored && !findDraft(this.kind, this.id)) this.#keepHere(this.#stored.wanted);
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
    if (this.state !== 'away') return;
    if (!document.hidden) {
      this.save();
      return;
    }
    clearTimeout(this.#retry);
    this.#retry = setTimeout(this.#again, pauseMillis(this.#attempt));
  }

  /** Stops asking a server that is away; the draft stays on this device. */
  leave() {
    this.#stopWaiting();
    removeEventListener('storage', this.#storeChanged);
  }

  #tell() {
    for (const listener of this.#listeners) listener();
  }
}

function isEmpty(object) {
  return Object.keys(object).length === 0;
}
