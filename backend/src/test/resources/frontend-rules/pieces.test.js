import { ontoStart } from '/pages/new-recipe-rules.js';
import { byStyle, bySong, stylesOf } from '/pages/pieces-rules.js';
import { byPiece, sortingTitle } from '/pages/recipes-rules.js';
import { openedWords, untilWords } from '/pages/shares-rules.js';
import { equal } from './expect.js';

const piece = (title, ...styles) => ({ title, content: { styles } });
const recipe = (title, of, extras) => ({ title, content: of ? { piece: of } : {}, extras });

export const tests = {
  styles_are_read_from_what_was_typed() {
    equal(stylesOf(' Reel, slow air ,, REEL;jig'), ['reel', 'slow air', 'jig']);
    equal(stylesOf(''), []);
    equal(stylesOf(Array.from({ length: 25 }, (_, index) => `s${index}`).join()).length, 20);
  },
  a_piece_stands_under_each_of_its_styles() {
    const groups = byStyle([piece('The Kesh', 'jig'), piece('Loose'), piece('Banks', 'reel', 'jig')]);
    equal(groups.map(([style, group]) => [style, group.map(({ title }) => title)]), [['jig', ['Banks', 'The Kesh']], ['reel', ['Banks']], ['', ['Loose']]]);
  },
  articles_do_not_count_when_looking_up() {
    equal(bySong([piece('The Kesh'), piece('Lark'), piece('A Fig')]).map(({ title }) => title), ['A Fig', 'The Kesh', 'Lark']);
    equal(sortingTitle('Theory'), 'Theory');
  },
  starting_points_come_first_and_the_most_followed_before_the_others() {
    const { startingPoints, pieces } = byPiece([
      recipe('Drive', null, { followers: 3 }), recipe('Everyday', null, { followers: 10 }),
      recipe('Round', 'k', { pieceTitle: 'The Kesh' }), recipe('Slow', 'c', { pieceTitle: 'The Coolin' }), recipe('Drone', 'c', { pieceTitle: 'The Coolin' })]);
    equal(startingPoints.map(({ title }) => title), ['Everyday', 'Drive']);
    equal(pieces.map(([title, group]) => [title, group.length]), [['The Coolin', 2], ['The Kesh', 1]]);
  },
  a_new_recipe_holds_nothing_of_its_own_on_top_of_a_starting_point() {
    const start = { id: 's', revision: 4, content: { synth: 'theirs' } };
    equal(ontoStart({ title: 'New', synth: 'mine' }, start), { title: 'New', synth: 'theirs', follows: { id: 's', revision: 4 }, settings: {} });
    equal(ontoStart({ title: 'New', follows: { id: 's', revision: 4 } }, null).follows, undefined);
    equal(ontoStart({ title: 'New' }, null).settings, { straight: { on: true, parameters: {} }, voices: {}, effects: {}, slot: '', notes: '' });
  },
  a_share_tells_how_often_it_was_opened_and_for_how_long_it_is_open() {
    equal(openedWords({ opened: 0 }), 'not opened yet');
    equal(openedWords({ opened: 1, lastOpenedAt: '2026-11-26T12:00:00Z' }).startsWith('opened once, last 26 Nov 2026'), true);
    equal(openedWords({ opened: 3, lastOpenedAt: '2026-11-26T12:00:00Z' }).startsWith('opened 3 times'), true);
    equal(untilWords({ state: 'open' }), 'until it is revoked');
    equal(untilWords({ state: 'expired', expiresAt: '2026-11-26T12:00:00Z' }).startsWith('ran out 26 Nov 2026'), true);
  },
};
