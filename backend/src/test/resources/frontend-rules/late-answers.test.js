import { show as showLog } from '/pages/log.js';
import { show as showPieces } from '/pages/pieces.js';
import { show as showRecipes } from '/pages/recipes.js';
import { AddPiece } from '/parts/add-piece.js';
import { DividerFinder } from '/parts/divider-finder.js';
import { HistoryList } from '/parts/history-list.js';
import { PlayerList } from '/parts/player-list.js';
import { equal } from './expect.js';
import { answering, button, look, press, settled, sheetOfPaper } from './notebook.js';

const entry = (id, text) => ({ id, kind: 'log', title: text, revision: 1, content: { date: '2026-11-18', event: 'practice', text, about: {} } });
const piece = (title) => ({ id: title, title, content: {} });
const revision = (number) => ({ revision: number, savedAt: '2026-11-18T20:00:00Z', savedBy: 'Mira', reason: '' });
const pair = (upperOhms) => ({
  upperOhms, lowerOhms: 1000, volts: 5, minVolts: 4.9, maxVolts: 5.1, errorVolts: 0, milliamps: 1, theveninOhms: 500,
  upperRatingShare: 0.1, lowerRatingShare: 0.1, upperBands: ['brown'], lowerBands: ['brown'],
});
const told = (element, selector) => [...element.querySelectorAll(selector)].map((each) => each.textContent);

export const tests = {
  async a_list_is_searched_only_once_its_first_answer_is_there() {
    for (const show of [showPieces, showRecipes]) {
      await answering(async (asked) => {
        const page = sheetOfPaper();
        const drawn = show(page, { query: new URLSearchParams() });
        await settled();
        equal(page.leaf.querySelector('input'), null);
        await asked[0].answer({ items: [] });
        await drawn;
        equal(page.leaf.querySelectorAll('input').length, 1);
      });
    }
    history.replaceState(null, '', location.pathname);
  },
  async earlier_entries_of_one_search_do_not_come_into_the_next_and_the_way_to_the_page_is_no_entry() {
    localStorage.clear();
    await answering(async (asked) => {
      const page = sheetOfPaper();
      const drawn = showLog(page);
      await settled();
      for (const titles of asked.splice(0)) await titles.answer({ items: [] });
      await asked.pop().answer({ items: ['a', 'b', 'c', 'd', 'e', 'f'].map((id) => entry(id, id)), next: 'more' });
      await drawn;
      button(page.leaf, 'Earlier').click();
      const earlier = asked.pop();
      await look(page.leaf, 'buzz');
      await asked.pop().answer({ items: [entry('g', 'it buzzes')] });
      await earlier.answer({ items: [entry('h', 'it sings')], next: 'still more' });
      equal(told(page.leaf, '.told'), ['it buzzes']);
      equal(button(page.leaf, 'Earlier').hidden, true);
      const moved = new Promise((resolve) => { addEventListener('hashchange', resolve, { once: true }); });
      location.hash = '#page';
      await moved;
      equal(asked, []);
    });
    history.replaceState(null, '', location.pathname);
  },
  async what_is_added_to_a_set_is_what_the_words_in_the_field_find() {
    await answering(async (asked) => {
      const element = document.createElement('div');
      const added = [];
      AddPiece(element, { onAdd: ({ title }) => added.push(title) });
      const field = element.querySelector('input');
      await look(element, 'air');
      await asked[0].answer({ items: [piece('Air')] });
      await look(element, 'reel');
      equal(added, []);
      await asked[1].answer({ items: [piece('Reel')] });
      await press(field, 'Enter');
      equal(added, ['Reel']);
      await look(element, 'jig');
      await press(field, 'Escape');
      await asked[2].answer({ items: [piece('Jig')] });
      equal(told(element, 'li'), []);
    });
  },
  async resistors_stand_there_for_the_voltage_that_is_wanted_now_or_not_at_all() {
    await answering(async (asked) => {
      const element = document.createElement('div');
      const taken = [];
      let goal = { supplyVolts: 9, targetVolts: 5 };
      const finder = DividerFinder(element, { goal: () => ({ ...goal }), onTake: ({ upperOhms }) => taken.push(upperOhms) });
      button(element, 'Find').click();
      goal = { supplyVolts: 9, targetVolts: 3 };
      button(element, 'Find').click();
      await asked[1].answer({ best: pair(2000), alternatives: [] });
      await asked[0].answer({ best: pair(800), alternatives: [] });
      equal(told(element, 'strong').length, 1);
      button(element, 'Take').click();
      equal(taken, [2000]);
      goal = { supplyVolts: 12, targetVolts: 3 };
      button(element, 'Take').click();
      equal([taken, told(element, 'strong')], [[2000], []]);
      equal(element.querySelector('p').textContent.includes('has changed'), true);
      button(element, 'Find').click();
      await asked[2].answer({ best: pair(3000), alternatives: [] });
      finder.update();
      equal(told(element, 'strong').length, 1);
      goal = 'Say what it should give.';
      finder.update();
      equal(told(element, 'strong'), []);
    });
  },
  async older_revisions_are_listed_once_and_what_stands_there_stays_if_they_cannot_be_read() {
    await answering(async (asked) => {
      const element = document.createElement('div');
      HistoryList(element, { kind: 'rigs', id: 'a', current: 9 });
      await asked[0].answer({ items: [9, 8].map(revision), next: '8' });
      button(element, 'Older').click();
      button(element, 'Older').click();
      equal(asked.length, 2);
      await asked[1].fail();
      equal(told(element, 'strong'), ['9', '8']);
      button(element, 'Try again').click();
      await asked[2].answer({ items: [7].map(revision) });
      equal(told(element, 'strong'), ['9', '8', '7']);
      equal([button(element, 'Older').hidden, button(element, 'Try again')], [true, undefined]);
    });
  },
  async an_invitation_is_shown_even_if_the_players_cannot_be_read_again() {
    await answering(async (asked) => {
      const part = PlayerList({ onChanged() {} });
      document.body.append(part.element);
      part.draw();
      await asked[0].answer({ items: [] });
      part.element.querySelector('input').value = 'Jonas';
      button(part.element, 'Make the invitation').click();
      await asked[1].answer({ name: 'Jonas', invitation: 'https://example.org/join#abc', endsAt: '2026-11-28T20:00:00Z' });
      await asked[2].fail();
      const dialog = document.querySelector('.invitation-dialog');
      equal(dialog.querySelector('input').value, 'https://example.org/join#abc');
      equal(part.element.textContent.includes('The notebook is out of reach.'), true);
      dialog.remove();
      part.element.remove();
    });
  },
};
