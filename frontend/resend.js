/**
 * resend.js: whatever page is open, sends what waits on this device because the server was away.
 * What somebody else has touched meanwhile is not decided here: its own page shows both values.
 */
import { Keeping } from './save.js';
import { allDrafts, findDraft } from './drafts.js';

/**
 * @param {(draft: import('./drafts-rules.js').Draft) => boolean} isElsewhere false for the sheet that is open on this page
 * @returns {Promise<{ sent: number, waiting: import('./drafts-rules.js').Draft[] }>} waiting: everything still only on this device
 */
export async function resendWaiting(isElsewhere) {
  let sent = 0;
  for (const draft of allDrafts().filter((each) => each.wanted && isElsewhere(each))) {
    const keeping = new Keeping(draft.kind, draft.id, null, draft);
    await keeping.save();
    keeping.leave();
    if (keeping.state === 'away') break;
    if (!findDraft(draft.kind, draft.id)) sent += 1;
  }
  return { sent, waiting: allDrafts().filter(isElsewhere) };
}
