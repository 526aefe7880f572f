/** compare.js: two revisions of anything, and the way back to either. */
import { actOnSheet, get, readSheet } from '../api.js';
import { el } from '../dom.js';
import { ChangeList } from '../parts/change-list.js';
import { opensFirst } from '../parts/menu-select.js';
import { PageHead } from '../parts/page-head.js';
import { KIND_WORDS, compareAddress, sheetAddress } from '../places-rules.js';
import { fileAddress } from '../tab-notebook.js';
import { moment } from '../words-rules.js';

export async function show(page, { params: { kind, id }, query }) {
  if (!Object.hasOwn(KIND_WORDS, kind)) throw new RangeError('There is no such page in this notebook.');
  const sheet = `/api/${kind}/${encodeURIComponent(id)}`;
  const [newest, revisions] = await Promise.all([readSheet(kind, id), allRevisions(sheet)]);
  const now = Number(query.get('now')) || newest.revision;
  const was = Number(query.get('was')) || Math.max(1, now - 1);
  const word = KIND_WORDS[kind];
  page.title(`${newest.title}: ${was} and ${now}`);
  PageHead(page.leaf, {
    kicker: `What changed in the ${word}`,
    title: el('a', { class: 'plain-link', href: sheetAddress(kind, id) }, newest.title),
    lead: was === now ? `Revision ${was} against itself` : `From revision ${was} to revision ${now}`,
  });
  const list = el('div', { class: 'compared' });
  page.leaf.append(
    el('div', { class: 'pair' }, side('Was', was, (revision) => [revision, now]), side('Now', now, (revision) => [was, revision])),
    list,
    el('p', { class: 'small no-print' }, el('a', { class: 'pencil', href: fileAddress(`${sheet}/compare?was=${was}&now=${now}&format=patch`) }, 'These changes as a file for other programs')));
  const { changes } = await get(`${sheet}/compare`, { was, now });
  ChangeList(list, changes, { none: 'These two say the same.' });

  function side(label, revision, next) {
    const about = revisions.find((each) => each.revision === revision);
    const trouble = el('p', { class: 'unsafe', role: 'status' });
    const select = el('select', { 'aria-label': label, on: { change: () => location.assign(compareAddress(kind, id, ...next(Number(select.value)))) } },
      revisions.map((each) => el('option', { value: each.revision, selected: each.revision === revision }, `${each.revision} · ${moment(each.savedAt)}`)));
    opensFirst(select);
    return el('section', { 'aria-label': label },
      el('label', { class: 'field' }, el('span', { class: 'label' }, label), select),
      about?.savedBy || about?.reason ? el('p', { class: 'pencil about' }, [about.savedBy, about.reason ? `“${about.reason}”` : ''].filter(Boolean).join(': ')) : null,
      el('div', { class: 'buttons' },
        el('a', { class: 'button quiet', href: sheetAddress(kind, id, revision === newest.revision ? undefined : revision) }, 'read'),
        revision === newest.revision ? el('span', { class: 'pencil' }, 'the newest') : restoreButton(revision, trouble)),
      trouble);
  }

  function restoreButton(revision, trouble) {
    const button = el('button', { type: 'button', class: 'quiet writes', title: `Saves revision ${revision} again, as revision ${newest.revision + 1}; nothing is lost` }, 'go back to this');
    button.addEventListener('click', async () => {
      button.disabled = true;
      try {
        const restored = await actOnSheet(`${sheet}/revisions/${revision}/restore`, newest.revision);
        location.assign(compareAddress(kind, id, newest.revision, restored.revision));
      } catch (failure) {
        trouble.textContent = failure.message;
        button.disabled = false;
      }
    });
    return button;
  }
}

async function allRevisions(sheet) {
  const found = [];
  let after;
  do {
    const page = await get(`${sheet}/revisions`, { limit: 200, after });
    found.push(...page.items);
    after = page.next;
  } while (after && found.length < 1000);
  return found;
}
