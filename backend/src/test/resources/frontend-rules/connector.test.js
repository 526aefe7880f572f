import { ConnectorEditor } from '/parts/connector-editor.js';
import { ROLES, missingIn, newRole, nextPin, pinOrder, roleWords } from '/parts/connector-rules.js';
import { ohmsWords, routesInOrder, viaWords } from '/parts/adapter-rules.js';
import { equal } from './expect.js';

export const tests = {
  a_control_line_that_is_written_down_later_is_offered() {
    const place = document.createElement('div');
    document.body.append(place);
    const content = { connector: { pins: { 3: { role: { carries: 'control', line: 'volume' } } } } };
    const lines = ['volume'];
    const editor = ConnectorEditor(place, { keeping: { content, change: (edit) => edit(content) }, shapes: [], lines: () => lines });
    lines.push('source');
    editor.update();
    place.querySelector('.detail button.value').click();
    equal([...place.querySelectorAll('.detail option')].map(({ text }) => text), ['volume', 'source']);
    place.remove();
  },
  unknown_is_a_role_like_any_other() {
    equal(ROLES.some(([carries]) => carries === 'unknown'), true);
    equal(missingIn({ pins: { 1: { role: { carries: 'unknown' } } } }), null);
  },
  roles_are_told_in_words() {
    equal(roleWords({ carries: 'string', string: 2 }), 'string 2');
    equal(roleWords({ carries: 'supply', volts: 7 }), 'supply +7 V');
    equal(roleWords({ carries: 'supply', volts: -7 }), 'supply −7 V');
    equal(roleWords({ carries: 'control', line: 'volume' }), 'control line volume');
    equal(roleWords({ carries: 'unknown' }), 'not known yet');
  },
  the_next_string_pin_takes_the_first_string_that_is_free() {
    equal(newRole('string', { takenStrings: [1, 2, 4] }), { carries: 'string', string: 3 });
  },
  no_voltage_is_guessed() {
    equal(newRole('supply'), { carries: 'supply' });
    equal(missingIn({ pins: { 7: { role: newRole('supply') } } }), 'Pin 7 is a supply: write its volts, or call it not known yet.');
    equal(missingIn({ pins: { 7: { role: { carries: 'supply', volts: -7 } } } }), null);
  },
  a_control_pin_names_its_line() {
    equal(newRole('control', { lines: ['volume'] }), { carries: 'control', line: 'volume' });
    equal(missingIn({ pins: { 3: { role: newRole('switch') } } }), 'Pin 3 is a switch line: say which.');
  },
  a_connector_has_pins_or_is_not_described() {
    equal(missingIn(undefined), null);
    equal(missingIn({ pins: {} }), 'The connector has no pins yet: add one, or take the connector out.');
  },
  pins_are_counted_as_a_person_counts() {
    equal(pinOrder({ 10: 0, 2: 0, shell: 0, 1: 0, gnd: 0 }), ['1', '2', '10', 'gnd', 'shell']);
    equal(nextPin({ 1: 0, 8: 0, shell: 0 }), '9');
    equal(nextPin({}), '1');
  },
  routes_are_listed_by_the_instruments_pins() {
    const routes = { a: { synthPin: '12' }, b: { instrumentPin: '10', synthPin: '1' }, c: { instrumentPin: '2', synthPin: '3' }, d: { synthPin: '5' }, e: { instrumentPin: '2', synthPin: '1' } };
    equal(routesInOrder({ routes }).map(({ instrumentPin = '', synthPin }) => `${instrumentPin}-${synthPin}`), ['2-1', '2-3', '10-1', '-5', '-12']);
    equal(routesInOrder(undefined), []);
  },
  what_stands_between_two_pins_is_told_in_words() {
    equal(viaWords(undefined), 'straight');
    equal(viaWords({ via: 'divider', upperOhms: 10_000, lowerOhms: 4_700, supplyPin: '12' }), 'divider 10 kΩ over 4.7 kΩ from supply pin 12');
    equal(viaWords({ via: 'switch', positions: { up: { via: 'straight' }, down: { via: 'open' } } }), 'switch: up straight, down left open');
    equal(ohmsWords(999), '999 Ω');
    equal(ohmsWords(1_000), '1 kΩ');
    equal(ohmsWords(2_200_000), '2.2 MΩ');
  },
};
