/** recipe.js: one recipe: the sound from top to bottom, each value with where it comes from; or a starting point. */
import { get, post, readSheet } from '../api.js';
import { el, fill } from '../dom.js';
import { ChangeList } from '../parts/change-list.js';
import { FollowersDialog } from '../parts/followers-dialog.js';
import { editableTitle } from '../parts/gear-page.js';
import { HistoryList } from '../parts/history-list.js';
import { NotRead } from '../parts/not-read.js';
import { OldRevision } from '../parts/old-revision.js';
import { PageHead } from '../parts/page-head.js';
import { SaveBar } from '../parts/save-bar.js';
import { ShareDialog } from '../parts/share-dialog.js';
import { SoundEditor } from '../parts/sound-editor.js';
import { UsedBy } from '../parts/used-by.js';
import { compareAddress, sheetAddress } from '../places-rules.js';
import { recipeSound } from '../recipe-sound.js';
import { openSheet } from '../save.js';
import { counted, number } from '../words-rules.js';

export async function show(page, { params: { id }, query }) {
  const old = Number(query.get('revision')) || 0;
  const keeping = await openSheet('recipes', id);
  page.twoColumns();
  if (old && old !== keeping.envelope?.revision) {
    await showOld(page, await readSheet('recipes', id, old), keeping.envelope?.revision);
    return;
  }
  const around = await surroundings(keeping.content);
  const { piece, synth } = around;
  let { start } = around;
  const sound = recipeSound(keeping, { start: () => start, synth, piece });
  drawHead();
  const standing = el('div', { class: 'recipe-standing' });
  const lost = el('div');
  page.leaf.append(standing, lost);
  drawStanding();
  const editor = SoundEditor(section(page.leaf), sound);
  SaveBar(page.leaf, keeping, { askWhy: true, ready: () => (keeping.content.title?.trim() ? null : 'Give the recipe a name first.'), confirm: askFollowers, onSaved: saved });
  keeping.onChange(follow);
  drawMargin();

  function drawHead() {
    page.title(keeping.content.title);
    PageHead(page.leaf, {
      kicker: kicker(piece),
      title: editableTitle(keeping),
      lead: lead(piece, synth),
      doors: [
        el('button', { type: 'button', class: 'writes', on: { click: () => ShareDialog(keeping).open() } }, 'Share'),
        el('button', { type: 'button', on: { click: () => print() } }, 'Print the card'),
      ],
    });
  }

  async function drawStanding() {
    try {
      await tellStanding();
    } catch (failure) {
      NotRead(standing, failure, drawStanding);
    }
  }

  async function tellStanding() {
    if (piece && !start) fill(standing, el('p', { class: 'pencil' }, 'It stands alone: every value is this recipe’s own.'));
    if (!piece) await drawFollowers();
    if (!start) return;
    const newest = await readSheet('recipes', start.id);
    const isBehind = newest.revision > start.revision;
    fill(standing,
      el('p', {}, 'On top of ', el('a', { href: sheetAddress('recipes', start.id, isBehind ? start.revision : undefined) }, start.title), el('span', { class: 'pencil' }, ` as of revision ${start.revision}. What this piece says for itself is marked.`)),
      isBehind ? el('div', { class: 'moved-on' },
        el('p', {}, `${start.title} has moved on to revision ${newest.revision}; this recipe stayed with ${start.revision}.`),
        el('div', { class: 'buttons' },
          el('button', { type: 'button', on: { click: () => followOn(newest) } }, 'Follow on'),
          el('a', { class: 'button quiet', href: compareAddress('recipes', start.id, start.revision, newest.revision) }, `What changed in ${start.title}`))) : null);
  }

  async function drawFollowers() {
    if (keeping.baseRevision === 0) return;
    const { items } = await get(`/api/recipes/${id}/followers`);
    fill(standing, el('p', { class: 'pencil' }, items.length
      ? `${counted(items.length, 'recipe follows', 'recipes follow')} it. Before a change is saved, this page tells how each of them would sound.`
      : 'No recipe follows it yet.'), el('div', { class: 'buttons' }, el('a', { class: 'button', href: `/new/recipes?start=${id}` }, 'New recipe on top of it')));
  }

  function followOn(newest) {
    start = newest;
    keeping.change((content) => { content.follows = { id: newest.id, revision: newest.revision }; });
    drawStanding();
  }

  /** A starting point takes its followers along only when the player has seen what that does. */
  async function askFollowers() {
    if (piece || keeping.baseRevision === 0) return true;
    page.say('Asking the recipes that follow it …');
    try {
      const { followers } = await post(`/api/recipes/${id}/preview`, { content: keeping.content });
      if (followers.length === 0) return true;
      const stayPinned = await FollowersDialog(followers, { title: keeping.content.title, revision: keeping.baseRevision });
      if (stayPinned === null) return false;
      keeping.extra = { stayPinned };
      return true;
    } catch (failure) {
      page.say(`Not saved yet, because the recipes that follow it could not be asked: ${failure.message}`);
      return false;
    }
  }

  async function saved(envelope) {
    page.title(envelope.title);
    drawMargin();
    await follow();
    drawStanding();
  }

  /** After a merge or thrown-away edits the recipe may follow another revision than the page knows. */
  async function follow() {
    const { follows } = keeping.content;
    if (follows && follows.revision !== start?.revision) {
      try {
        const next = await readSheet('recipes', follows.id, follows.revision);
        // Meanwhile the recipe may follow yet another one.
        if (keeping.content.follows?.revision !== follows.revision) return;
        start = next;
        drawStanding();
      } catch (failure) {
        NotRead(lost, failure, follow);
        return;
      }
    }
    fill(lost);
    editor.update();
  }

  function drawMargin() {
    const users = el('div');
    const history = el('div');
    fill(page.margin, el('h2', {}, piece ? 'Played in' : 'Where it is used'), users, el('h2', {}, 'History'), history);
    if (!keeping.envelope) return;
    UsedBy(users, { kind: 'recipes', id, none: 'In no set yet.' });
    HistoryList(history, { kind: 'recipes', id, current: keeping.envelope.revision });
  }
}

async function showOld(page, envelope, newest) {
  const { piece, synth, start } = await surroundings(envelope.content);
  page.title(`${envelope.title}, revision ${envelope.revision}`);
  PageHead(page.leaf, { kicker: kicker(piece), title: envelope.title, lead: lead(piece, synth) });
  OldRevision(page.leaf, { envelope, newest });
  SoundEditor(section(page.leaf), recipeSound({ content: envelope.content }, { start: () => start, synth, piece, readOnly: true }));
  const changes = el('div');
  fill(page.margin, el('h2', {}, 'What has changed since'), changes);
  ChangeList(changes, (await get(`/api/recipes/${envelope.id}/compare`, { was: envelope.revision, now: newest })).changes);
}

/** The piece it is for, the synth whose words it uses, the starting point's revision it follows. */
async function surroundings({ piece, synth, follows }) {
  const [ofPiece, ofSynth, start] = await Promise.all([
    piece ? readSheet('pieces', piece) : null, synth ? readSheet('synths', synth) : null, follows ? readSheet('recipes', follows.id, follows.revision) : null]);
  return { piece: ofPiece, synth: ofSynth, start };
}

function kicker(piece) {
  return piece ? ['Recipe for ', el('a', { href: sheetAddress('pieces', piece.id) }, piece.title)] : 'Starting point';
}

function lead(piece, synth) {
  const { key, meter, tempoBpm } = piece?.content ?? {};
  return [[key, meter, tempoBpm ? `${number(tempoBpm)} bpm` : ''].filter(Boolean).join(' · '), synth ? el('span', {}, piece ? ' · ' : '', el('a', { href: sheetAddress('synths', synth.id) }, synth.title)) : ''];
}

function section(leaf) {
  const element = el('section');
  leaf.append(element);
  return element;
}
