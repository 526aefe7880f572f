/**
 * pin-places.js: where the pins of one connector sit: tap a pin, then tap its place; arrow keys move the chosen pin.
 *
 *   const places = PinPlaces(element, { keeping, title: 'Instrument', side: () => 'mating' });
 *   places.update();
 */
import { el, fill } from '../dom.js';
import { keyedList } from '../keyed-list.js';
import { pinOrder, roleWords } from './connector-rules.js';
import { aroundCircle, movedBy, placesOf, seenFrom, snapped } from './pin-places-rules.js';

/** Share of the face that lies between the outermost pins and its rim. */
const RIM = 0.86;

/** @param {HTMLElement} element @param {{ keeping: import('../save.js').Keeping, title: string, side: () => string, roleIn?: (role: any) => string }} state */
export function PinPlaces(element, { keeping, title, side, roleIn = roleWords }) {
  const face = el('div', { class: 'face', role: 'group', 'aria-label': `${title}: places of the pins` });
  const told = el('p', { class: 'help', role: 'status' });
  const heading = el('h3');
  let chosen = '';
  element.classList.add('pin-places');
  fill(element, heading, face, told, el('div', { class: 'buttons' },
    el('button', { type: 'button', class: 'quiet', on: { click: inOrder } }, 'All in order around'),
    el('button', { type: 'button', class: 'quiet', on: { click: forget } }, 'Places not known')));
  face.addEventListener('click', (event) => {
    if (!chosen || /** @type {Element} */ (event.target).closest('button')) return;
    const { left, top, width, height } = face.getBoundingClientRect();
    put(chosen, seen({
      x: snapped(((event.clientX - left) / width * 2 - 1) / RIM),
      y: snapped((1 - (event.clientY - top) / height * 2) / RIM),
    }));
  });
  update();
  return { element, update };

  function connector() {
    return keeping.content.connector;
  }

  /** From the noted side to the seen one, and back: the same mirror. */
  function seen(place) {
    return seenFrom(place, connector().drawnFrom ?? 'mating', side());
  }

  function put(label, place) {
    keeping.change((content) => {
      const places = { ...placesOf(content.connector.pins), [label]: place };
      for (const [each, { x, y }] of Object.entries(places)) Object.assign(content.connector.pins[each], { x, y });
    });
    told.textContent = `Pin ${label} sits at ${words(seen(place))}.`;
  }

  function inOrder() {
    keeping.change((content) => {
      for (const [label, { x, y }] of Object.entries(aroundCircle(pinOrder(content.connector.pins)))) Object.assign(content.connector.pins[label], seen({ x, y }));
    });
  }

  function forget() {
    keeping.change((content) => {
      for (const pin of Object.values(content.connector.pins)) {
        delete pin.x;
        delete pin.y;
      }
    });
  }

  function update() {
    element.hidden = !connector();
    if (!connector()) return;
    heading.textContent = `${title}, ${side() === 'mating' ? 'mating side' : 'solder side'}`;
    const labels = pinOrder(connector().pins);
    const isNoted = labels.every((label) => connector().pins[label].x !== undefined);
    if (!told.textContent) told.textContent = isNoted ? 'Tap a pin, then tap its place; or move it with the arrow keys.' : 'Places are not noted: these are in order only. Tap a pin, then tap its place.';
    keyedList(face, labels, (label) => label, PinButton, (button) => button.update());
  }

  function PinButton(label) {
    const button = el('button', { type: 'button', class: 'pin-place' }, label);
    button.addEventListener('click', () => {
      chosen = chosen === label ? '' : label;
      told.textContent = chosen ? `Pin ${label}: now tap its place, or use the arrow keys.` : 'Tap a pin, then tap its place; or move it with the arrow keys.';
      update();
    });
    button.addEventListener('keydown', (event) => {
      const next = movedBy(seen(placesOf(connector().pins)[label]), event.key);
      if (!next) return;
      event.preventDefault();
      chosen = label;
      put(label, seen(next));
    });
    showButton();
    return { element: button, update: showButton };

    function showButton() {
      const { role } = connector().pins[label];
      const place = seen(placesOf(connector().pins)[label]);
      button.style.setProperty('left', `${50 + place.x * RIM * 50}%`);
      button.style.setProperty('top', `${50 - place.y * RIM * 50}%`);
      button.classList.toggle('unknown', role.carries === 'unknown');
      button.setAttribute('aria-pressed', String(chosen === label));
      button.setAttribute('aria-label', `Pin ${label}, ${roleIn(role)}, at ${words(place)}`);
    }
  }
}

/** "left, top"; the middle is the middle. @param {{ x: number, y: number }} place */
function words({ x, y }) {
  const across = x < -0.15 ? 'left' : x > 0.15 ? 'right' : 'middle';
  const up = y < -0.15 ? 'bottom' : y > 0.15 ? 'top' : 'middle';
  return `${across} ${Math.round(Math.abs(x) * 100)}, ${up} ${Math.round(Math.abs(y) * 100)}`;
}
