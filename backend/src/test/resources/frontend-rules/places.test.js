import { anchorOf, compareAddress, placeOf, setlistComparisonAddress, sheetAddress } from '/places-rules.js';
import { equal } from './expect.js';

const at = (address) => {
  const url = new URL(address, 'http://127.0.0.1');
  const place = placeOf(url);
  return place && [place.page, place.params.id ?? ''];
};

export const tests = {
  every_address_has_its_page() {
    equal(at('/'), ['tonight', '']);
    equal(at('/rigs'), ['rigs', '']);
    equal(at('/rigs/'), ['rigs', '']);
    equal(at('/rigs/7'), ['rig', '7']);
    equal(at('/levels'), ['levels', '']);
    equal(at('/levels/7'), ['level-bench', '7']);
    equal(at('/setlists/compare?was=a&now=b'), ['setlist-comparison', '']);
    equal(at('/setlists/a'), ['setlist', 'a']);
    equal(at('/compare/recipes/a?was=1&now=2'), ['compare', 'a']);
    equal(at('/new/log?rig=a'), ['log-rehearsal', '']);
    equal(at('/takes'), ['takes', '']);
    equal(at('/takes/live'), ['live-take', '']);
    equal(at('/takes/a'), ['take', 'a']);
    equal(at('/exercise'), ['exercise', '']);
    equal(at('/people'), ['people', '']);
    equal(at('/nowhere'), null);
    equal(at('/rigs/a/b'), null);
  },
  a_page_that_makes_something_says_what() {
    const makes = (address) => placeOf(new URL(address, 'http://127.0.0.1')).makes;
    equal(makes('/new/rigs?path=start'), 'rigs');
    equal(makes('/new/log'), 'log');
    equal(makes('/rigs/7'), '');
    equal(makes('/people'), '');
  },
  a_broken_escape_is_taken_as_it_stands() {
    equal(at('/rigs/%E0%A4%A'), ['rig', '%E0%A4%A']);
    equal([anchorOf('#100%'), anchorOf('#a%20b'), anchorOf('')], ['100%', 'a b', '']);
  },
  addresses_lead_back_to_their_page() {
    equal(at(sheetAddress('rigs', 'a', 3)), ['rig', 'a']);
    equal(at(compareAddress('rigs', 'a', 1, 2)), ['compare', 'a']);
    equal(at(setlistComparisonAddress({ id: 'a' }, { id: 'b', revision: 2 })), ['setlist-comparison', '']);
    equal(sheetAddress('log', 'a'), '/log#a');
  },
  the_comparison_keeps_its_revisions() {
    const url = new URL(setlistComparisonAddress({ id: 'a', revision: 4 }, { id: 'b' }), 'http://127.0.0.1');
    equal([url.searchParams.get('was'), url.searchParams.get('now')], ['a@4', 'b']);
  },
};
