/** notebook.js: a notebook that answers when a test says so, in whichever order. */

/**
 * @param {(asked: { path: string, answer: (body: any) => Promise<void>, fail: () => Promise<void> }[]) => Promise<void>} work
 *   asked: every request so far; after `answer` and `fail` whatever follows from it has been done
 */
export async function answering(work) {
  const fetched = globalThis.fetch;
  const asked = [];
  globalThis.fetch = (path, { signal }) => new Promise((resolve, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason));
    asked.push({
      path,
      answer: (body) => settledAfter(resolve, { status: 200, text: async () => JSON.stringify(body) }),
      fail: () => settledAfter(reject, new TypeError('nobody answers')),
    });
  });
  try {
    await work(asked);
  } finally {
    globalThis.fetch = fetched;
  }
}

/** What app.js hands to a page. */
export function sheetOfPaper() {
  return { leaf: document.createElement('div'), margin: document.createElement('aside'), title() {}, twoColumns() {}, say() {} };
}

/** Types into the only search field there and asks at once. @param {Element} element @param {string} words */
export async function look(element, words) {
  const field = element.querySelector('input[type="search"]');
  field.value = words;
  await press(field, 'Enter');
}

/** @param {Element} target @param {string} key */
export async function press(target, key) {
  target.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
  await settled();
}

/** @param {Element} element @param {string} word the beginning of what it says */
export function button(element, word) {
  return [...element.querySelectorAll('button')].find((each) => each.textContent.startsWith(word));
}

/** Until everything is done that needs no more waiting. */
export function settled() {
  return new Promise((resolve) => { setTimeout(resolve); });
}

function settledAfter(act, what) {
  act(what);
  return settled();
}
