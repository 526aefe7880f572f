import { newWay, missingInRoute, missingInAdapter, newRouteId, parseOhms, unjoined, wayWords, wholeRoutes, withWay } from '/parts/route-rules.js';
import { inputsByRoutes, instrumentSide, missingForBench, standing, standingWords, stringsElsewhere, synthSide } from '/wiring-rules.js';
import { equal } from './expect.js';

const VIOLIN = {
  title: 'Violin',
  strings: { 1: { note: 'E5', cents: 0 }, 2: { note: 'A4', cents: 0 }, 3: { note: 'D4', cents: 0 }, 4: { note: 'G3', cents: 2 } },
  connector: { pins: { 1: { role: { carries: 'ground' } }, 2: { role: { carries: 'string', string: 1 } }, 3: { role: { carries: 'string', string: 2 } } } },
};
const SYNTH = {
  title: 'Synth',
  connector: { pins: { 1: { role: { carries: 'ground' } }, 5: { role: { carries: 'string', string: 1 } }, 6: { role: { carries: 'string', string: 2 } }, 7: { role: { carries: 'supply', volts: 7 } } } },
};

export const tests = {
  resistances_are_read_as_players_write_them() {
    for (const [typed, ohms] of [['220', 220], ['4.7k', 4700], ['4,7 k', 4700], ['4k7', 4700], ['4.7 kΩ', 4700], ['1M', 1e6], ['2M2', 2.2e6], ['0.5', 0.5], ['470 ohms', 470], ['100R', 100]]) equal(parseOhms(typed), ohms);
  },
  what_is_no_resistance_is_not_read() {
    for (const typed of ['', ' ', '0', '-5', 'k', '4k7k', 'four', '1e3', '2000000M', 'NaN', '4.7.1']) equal(parseOhms(typed), null);
  },
  a_route_lets_go_of_the_pin_it_cannot_have() {
    equal(withWay({ instrumentPin: '2', synthPin: '5', via: { via: 'straight' } }, 'tied', []), { synthPin: '5', via: { via: 'tied', ohms: 0 } });
    equal(withWay({ instrumentPin: '2', via: { via: 'straight' } }, 'open', []), { instrumentPin: '2', via: { via: 'open' } });
    equal(withWay({ instrumentPin: '2', synthPin: '5', via: { via: 'open' } }, 'straight', []), { instrumentPin: '2', synthPin: '5', via: { via: 'straight' } });
  },
  a_new_divider_has_one_source() {
    equal(newWay('divider', { supplyPins: ['7'] }).supplyPin, '7');
    equal(newWay('divider', { supplyPins: ['7'], isFromInstrument: true }).supplyPin, undefined);
  },
  every_new_way_between_two_pins_is_whole() {
    for (const way of ['straight', 'preamp', 'resistor', 'divider', 'switch']) equal(missingInRoute(withWay({ instrumentPin: '2', synthPin: '5' }, way, ['7'])), null);
    for (const way of ['tied', 'open', 'divider', 'switch']) equal(missingInRoute(withWay({ synthPin: '5' }, way, ['7'])), null);
  },
  what_a_route_lacks_is_told() {
    equal(missingInRoute({ via: { via: 'straight' } }), 'Say which pin of the synth it ends at.');
    equal(missingInRoute({ synthPin: '5' }), 'Say which pin of the instrument it starts at.');
    equal(missingInRoute({ via: { via: 'open' } }), 'Say which pin.');
    equal(missingInRoute({ synthPin: '5', via: { via: 'divider', upperOhms: 1, lowerOhms: 1 } }), 'Say which supply pin is divided.');
    equal(missingInRoute({ instrumentPin: '2', synthPin: '5', via: { via: 'divider', upperOhms: 1, lowerOhms: 1, supplyPin: '7' } }), 'A divider has one source: the supply pin or the instrument pin, not both.');
    equal(missingInRoute({ synthPin: '5', via: { via: 'switch', positions: { on: { via: 'open' } } } }), 'A switch needs two positions.');
    equal(missingInAdapter({ routes: { a: { via: { via: 'open' } } } }), 'Route “a”: Say which pin.');
  },
  what_is_not_whole_is_left_out_of_the_check_and_nothing_else() {
    equal(wholeRoutes({ routes: { a: { via: { via: 'open' } }, b: { synthPin: '1', via: { via: 'tied', ohms: 0 } } }, parts: { series: 'E12' } }), { routes: { b: { synthPin: '1', via: { via: 'tied', ohms: 0 } } }, parts: { series: 'E12' } });
    equal(wholeRoutes(undefined), { routes: {} });
  },
  a_new_route_takes_no_other_routes_name() {
    equal(newRouteId({}), 'route-1');
    equal(newRouteId({ x: {}, 'route-3': {} }), 'route-4');
  },
  ways_are_told_with_their_values() {
    equal(wayWords({ via: 'divider', upperOhms: 47000, lowerOhms: 8200 }), 'divider 47 kΩ over 8.2 kΩ');
    equal(wayWords({ via: 'preamp', gainDecibels: -6, supplyMilliamps: 0 }), 'preamp −6 dB, own battery');
    equal(wayWords({ via: 'tied', ohms: 0 }), 'tied to ground');
    equal(wayWords(), 'straight');
  },
  pins_that_no_route_speaks_of_are_known() {
    const adapter = { routes: { a: { instrumentPin: '2', synthPin: '5', via: { via: 'preamp', supplyPin: '7' } } } };
    equal(unjoined(adapter, VIOLIN.connector, 'instrumentPin'), ['1', '3']);
    equal(unjoined(adapter, SYNTH.connector, 'synthPin'), ['1', '6']);
  },
  the_bench_gets_open_notes_and_a_pickup_only_if_it_is_known() {
    equal(instrumentSide(VIOLIN).openNotes, { 1: 'E5', 2: 'A4', 3: 'D4', 4: 'G3' });
    equal('pickup' in instrumentSide(VIOLIN), false);
    equal(instrumentSide({ ...VIOLIN, pickup: { capacitancePicofarads: 470 } }).pickup, { sourcePicofarads: 470, cableMetres: 0 });
    equal(Object.keys(synthSide(SYNTH)), ['connector', 'controlLines']);
    equal(synthSide({ ...SYNTH, inputOhms: 2e6 }).inputOhms, 2e6);
  },
  what_keeps_the_bench_from_looking_is_told() {
    equal(missingForBench(VIOLIN, SYNTH), null);
    equal(missingForBench({ ...VIOLIN, connector: undefined }, SYNTH).startsWith('Write down the socket of Violin first'), true);
    equal(missingForBench(VIOLIN, { ...SYNTH, connector: { pins: { 3: { role: { carries: 'supply' } } } } }), 'Pin 3 is a supply: write its volts, or call it not known yet.');
  },
  inputs_follow_the_routes_and_not_what_is_open() {
    const routes = { a: { instrumentPin: '2', synthPin: '6', via: { via: 'straight' } }, b: { instrumentPin: '3', synthPin: '5', via: { via: 'open' } } };
    const inputs = inputsByRoutes({ routes }, VIOLIN.connector, SYNTH.connector);
    equal(inputs, { 1: 2 });
    equal(stringsElsewhere({ 1: { input: 2 }, 2: { input: 2 } }, inputs), ['2']);
    equal(stringsElsewhere({ 1: { input: 1 } }, {}), []);
  },
  only_what_is_unsafe_takes_the_mark_away() {
    equal(standingWords({ readyToSolder: true, findings: [{ severity: 'faulty' }] }), { mark: 'Ready to solder', words: 'Nothing unsafe; 1 that will not work.' });
    equal(standingWords({ readyToSolder: false, findings: [{ severity: 'unsafe' }, { severity: 'advice' }] }), { mark: 'Not ready to solder', words: '1 unsafe, 1 to think about.' });
  },
  what_is_not_whole_is_not_judged_whatever_the_rest_is() {
    const sheet = { readyToSolder: true, findings: [] };
    equal(standing({ sheet, missing: null }).isReady, true);
    equal(standing({ sheet, missing: 'Route “a”: Say which pin.' }), { isJudged: false, isReady: false, mark: 'Not judged yet', words: 'Route “a”: Say which pin.' });
    equal(standing({ sheet, missing: null, isEmpty: true }).words, 'There are no routes yet.');
    equal(standing({ sheet: null, missing: null }).words, 'Looking …');
  },
};
