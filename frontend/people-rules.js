/** people-rules.js: what is told about players, notebooks and rights. No DOM. */
import { moment } from './words-rules.js';

/**
 * @typedef {'read' | 'write' | 'own'} Right
 * @typedef {{ id: string, title: string, may: Right, ownedBy: string }} NotebookEntry
 * @typedef {{ id?: string, name: string, keeper: boolean, local: boolean, notebook?: NotebookEntry, notebooks: NotebookEntry[] }} Me
 * @typedef {{ player: string, name: string, may: Right }} Member
 * @typedef {{ id: string, name: string, keeper: boolean, joined: boolean }} Player
 */

/** What a member may do, as it is told and chosen. @type {Record<Right, string>} */
export const MAY_WORDS = { read: 'may read', write: 'may write', own: 'owns it' };

/** Whether saving is offered; while nobody knows, it is, and the notebook decides. @param {Me | null} me */
export function mayWriteAs(me) {
  return me?.notebook?.may !== 'read';
}

/** "Ask Mira or Jonas.", "Ask whoever owns it." @param {NotebookEntry | undefined} notebook */
export function askWords(notebook) {
  const owners = namesOf(notebook?.ownedBy);
  return owners.length ? `Ask ${owners.join(' or ')}.` : 'Ask whoever owns it.';
}

/** Under a notebook's title. @param {NotebookEntry} entry @param {Me} me */
export function entryWords({ may, ownedBy }, me) {
  if (me.local) return '';
  const others = namesOf(ownedBy).filter((name) => name !== me.name);
  if (may === 'own') return others.length ? `yours, and ${others.join(', ')}’s` : 'yours';
  const from = others.length ? `${others.join(', ')}’s` : 'somebody else’s';
  return may === 'write' ? `${from}; you may write` : `${from}; reading only`;
}

/** "until 3 Dec 2026, 20:00; it opens once" @param {{ endsAt: string }} invitation */
export function invitationWords({ endsAt }) {
  return `It opens once, until ${moment(endsAt)}.`;
}

/** Players who have no right yet, in the order they came. @param {Player[]} players @param {Member[]} members */
export function notYetMembers(players, members) {
  const known = new Set(members.map(({ player }) => player));
  return players.filter(({ id }) => !known.has(id));
}

/** A member whom nobody may take away or lower: the last who owns it. @param {Member} member @param {Member[]} members */
export function isLastOwner(member, members) {
  return member.may === 'own' && members.filter(({ may }) => may === 'own').length === 1;
}

/** @param {string} notebook its id; empty for none @param {string} path below /api/, with or without a query */
export function fileAddressIn(notebook, path) {
  if (!notebook) return path;
  return `${path}${path.includes('?') ? '&' : '?'}notebook=${encodeURIComponent(notebook)}`;
}

function namesOf(ownedBy = '') {
  return ownedBy.split(', ').filter(Boolean);
}
