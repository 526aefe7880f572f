/** shares-rules.js: what is told about a share. No DOM. */
import { counted, moment } from '../words-rules.js';

/** "opened 3 times, last 26 Nov 2026, 20:31". @param {{ opened: number, lastOpenedAt?: string }} share */
export function openedWords({ opened, lastOpenedAt }) {
  if (!opened) return 'not opened yet';
  return `opened ${opened === 1 ? 'once' : counted(opened, 'time')}, last ${moment(lastOpenedAt)}`;
}

/** "until 3 Dec 2026, 20:00", "until it is revoked". @param {{ expiresAt?: string, state: string }} share */
export function untilWords({ expiresAt, state }) {
  if (!expiresAt) return 'until it is revoked';
  return `${state === 'expired' ? 'ran out' : 'until'} ${moment(expiresAt)}`;
}
