/**
 * dom.js: builds elements. A player's words can only enter as text: there is no way here to write markup.
 *
 *   el('p', { class: 'pencil' }, 'Tuned to ', el('strong', {}, note))
 *   el('button', { type: 'button', on: { click: save } }, 'Save')
 *   svg('path', { d: 'M0 0h10' })
 *
 * Attribute values `null`, `undefined` and `false` leave the attribute off; `true` sets it empty.
 * Children `null`, `undefined` and `false` are left out; lists are flattened.
 */

/**
 * @typedef {Node | string | number | null | undefined | false} Child
 * @typedef {Record<string, unknown> & { on?: Record<string, EventListener> }} Attributes
 */

/**
 * @param {string} tag
 * @param {Attributes} [attributes]
 * @param {...(Child | Child[])} children
 * @returns {any} the element; `any` so that callers need not name its class
 */
export function el(tag, attributes = {}, ...children) {
  return dress(document.createElement(tag), attributes, children);
}

/**
 * The same for pictures.
 *
 * @param {string} tag
 * @param {Attributes} [attributes]
 * @param {...(Child | Child[])} children
 * @returns {any}
 */
export function svg(tag, attributes = {}, ...children) {
  return dress(document.createElementNS('http://www.w3.org/2000/svg', tag), attributes, children);
}

/** Replaces everything in an element. @param {Element} parent @param {...(Child | Child[])} children */
export function fill(parent, ...children) {
  parent.replaceChildren(...nodes(children));
  return parent;
}

function dress(element, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (name === 'on') {
      for (const [event, listener] of Object.entries(value)) element.addEventListener(event, listener);
    } else if (value === true) {
      element.setAttribute(name, '');
    } else if (value !== null && value !== undefined && value !== false) {
      element.setAttribute(name, checked(name, String(value)));
    }
  }
  element.append(...nodes(children));
  return element;
}

function nodes(children) {
  return children
    .flat(Infinity)
    .filter((child) => child !== null && child !== undefined && child !== false)
    .map((child) => (child instanceof Node ? child : document.createTextNode(String(child))));
}

function checked(name, value) {
  if (/^on/i.test(name)) throw new TypeError(`${name}: listeners go under "on"`);
  if (name === 'style') throw new TypeError('style: use a class, or element.style.setProperty');
  if (name === 'href' && !/^(\/(?!\/)|#|mailto:|blob:)/.test(value) && !value.startsWith(`${location.origin}/`)) {
    throw new TypeError(`href "${value.slice(0, 40)}" leaves this notebook`);
  }
  return value;
}
