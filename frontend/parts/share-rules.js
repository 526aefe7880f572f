/** share-rules.js: when a share ends. No DOM. */

/**
 * @param {string} days as chosen; empty for no end
 * @param {Date} now
 * @returns {string | undefined} ISO instant
 */
export function expiryInstant(days, now) {
  if (days === '') return undefined;
  return new Date(now.getTime() + Number(days) * 86_400_000).toISOString();
}
