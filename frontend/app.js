/**
 * app.js: draws what every page has, then the page that the address names.
 *
 * A page is a module in pages/ that exports
 *   export async function show(page, place) { … }
 * page  { leaf, margin, title(words), twoColumns(), say(words) }: where to draw; see below
 * place { page, room, params, query }: see places-rules.js
 * A page may throw: what went wrong is shown with what can be done about it.
 */
import { el, fill } from './dom.js';
import { findNewDraft, findRehearsal } from './drafts.js';
import { arrive, mayWrite } from './me.js';
import { Colophon, Masthead } from './parts/masthead.js';
import { ReadingOnly, watchRight } from './parts/reading-only.js';
import { watchSignIn } from './parts/signed-out.js';
import { say } from './parts/status-line.js';
import { Trouble } from './parts/trouble.js';
import { anchorOf, placeOf } from './places-rules.js';
import './sign-outs.js';

const main = document.getElementById('page');
const place = placeOf(location);
watchSignIn(document.getElementById('sign-in-again'));
watchRight();
Masthead(document.getElementById('masthead'), { room: place?.room });
const colophon = Colophon(document.getElementById('colophon'));
await open();
await colophon.look();

async function open() {
  const leaf = el('div', { class: 'leaf' });
  const margin = el('aside', { class: 'margin', 'aria-label': 'Context' });
  const sheet = el('div', { class: 'sheet' }, leaf, margin);
  fill(main, sheet);
  const page = {
    leaf,
    margin,
    /** The tab's title. @param {string} words */
    title(words) {
      document.title = words ? `${words} · Rosinbook` : 'Rosinbook';
    },
    /** Opens the margin beside the leaf at desktop width; on the phone it comes after it. */
    twoColumns() {
      sheet.classList.add('two');
    },
    say,
  };
  try {
    if (!place) throw new RangeError('There is no such page in this notebook.');
    main.classList.add(`on-${place.page}`);
    const [module, moved] = await Promise.all([import(`./pages/${place.page}.js`), arrive(), stylesheet(new URL(`./pages/${place.page}.css`, import.meta.url).href)]);
    if (place.makes && !mayWrite() && !begun(place.makes)) ReadingOnly(page);
    else await module.show(page, place);
    keepAnchor();
    if (moved) say(moved);
  } catch (failure) {
    page.title('Trouble');
    Trouble(fill(leaf), failure, { again: open });
  } finally {
    main.dataset.drawn = 'yes';
  }
}

/** What was begun before the right was taken away can still be read. */
function begun(kind) {
  return kind === 'log' ? findRehearsal() : findNewDraft(kind);
}

/** A page's own stylesheet is there before the page is drawn, once. */
function stylesheet(href) {
  if ([...document.styleSheets].some((sheet) => sheet.href === href)) return null;
  return new Promise((resolve) => {
    document.head.append(el('link', { rel: 'stylesheet', href, on: { load: resolve, error: resolve } }));
  });
}

/** The browser looked for the anchor before the page was drawn. */
function keepAnchor() {
  const target = document.getElementById(anchorOf(location.hash));
  if (target instanceof HTMLDetailsElement) target.open = true;
  target?.scrollIntoView({ block: 'start' });
}
