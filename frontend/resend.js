/**
 * resend.js: whatever page is open, sends what waits on this device because the server was away.
 * What somebody else has touched meanwhile is not decided here: its own page shows both values.
 */
import { allDrafts, findDraft } from './drafts.js';
import { mayWrite } from './me.js';
import { Keeping, openHere } from './save.js';

/** What is only on this device so far and not open on this page. */
export function waitingDrafts() {
  return allDrafts().filter((draft) => !openHere.has(draft.id));
}

/**
 * @returns {Promise<number>} how many the notebook has now
 */
export async function resendWaiting() {
  if (!mayWrite()) return 0;
  let sent = 0;
  for (const draft of waitingDrafts().filter((each) => each.wanted)) {
    const keeping = new Keeping(draft.kind, draft.id, null, draft);
    await keeping.save();
    keeping.leave();
    if (keeping.state === 'away') break;
    if (!findDraft(draft.kind, draft.id)) sent += 1;
  }
  return sent;
}
