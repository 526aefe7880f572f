/** expect.js: the few assertions of the page rules' tests. They throw; the browser test that loads the modules reports it. */
import { same } from '/drafts-rules.js';

/** Same value, looking into objects and lists. */
export function equal(actual, expected) {
  const isEqual = Object.is(actual, expected) || (typeof actual === 'object' && typeof expected === 'object' && same(actual, expected));
  if (!isEqual) throw new Error(`expected ${show(expected)}, got ${show(actual)}`);
}

/** Within a tolerance. */
export function near(actual, expected, tolerance) {
  if (!(Math.abs(actual - expected) <= tolerance)) throw new Error(`expected ${expected} ± ${tolerance}, got ${actual}`);
}

/** Throws an error whose message says so. */
export function fails(action, words) {
  try {
    action();
  } catch (failure) {
    if (!failure.message.includes(words)) throw new Error(`expected a failure that says "${words}", got "${failure.message}"`);
    return;
  }
  throw new Error(`expected a failure that says "${words}", got none`);
}

function show(value) {
  return value === undefined ? 'undefined' : JSON.stringify(value);
}
