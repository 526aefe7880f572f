/** log-rules.js: the log by month. No DOM. */

const MONTH = new Intl.DateTimeFormat('en-GB', { month: 'long', year: 'numeric', timeZone: 'UTC' });

/**
 * @template {{ content: { date: string } }} Entry
 * @param {Entry[]} entries newest first
 * @returns {[string, Entry[]][]} "November 2026" with its entries, in the same order
 */
export function byMonth(entries) {
  const months = [];
  for (const entry of entries) {
    const month = MONTH.format(new Date(`${entry.content.date}T00:00:00Z`));
    if (months.at(-1)?.[0] !== month) months.push([month, []]);
    months.at(-1)[1].push(entry);
  }
  return months;
}
