import { onAnswer } from '/api.js';
import { measureReadings } from '/level-requests.js';
import { showNotebook } from '/tab-notebook.js';
import { equal } from './expect.js';

/** Sends a meter's readings from a tab that shows this notebook. */
async function sent(status, answer) {
  const original = globalThis.XMLHttpRequest;
  const headers = {};
  const heard = [];
  onAnswer((problem) => heard.push(problem?.type ?? null));
  globalThis.XMLHttpRequest = class extends EventTarget {
    upload = new EventTarget();
    status = status;
    responseText = JSON.stringify(answer);
    open() {}
    setRequestHeader(name, value) {
      headers[name] = value;
    }
    send() {
      this.dispatchEvent(new Event('load'));
    }
  };
  showNotebook('n1');
  let outcome;
  try {
    outcome = await measureReadings({}, {});
  } catch (failure) {
    outcome = failure.name;
  } finally {
    showNotebook('');
    globalThis.XMLHttpRequest = original;
  }
  return { outcome, headers, heard };
}

export const tests = {
  async a_measurement_asks_the_notebook_of_its_tab() {
    const { outcome, headers, heard } = await sent(200, { advice: [] });
    equal(headers, { Accept: 'application/json', 'Rosinbook-Notebook': 'n1', 'Content-Type': 'application/json' });
    equal([outcome, heard], [{ advice: [] }, [null]]);
  },
  async an_ended_sign_in_is_told_as_everywhere() {
    const { outcome, heard } = await sent(401, { type: '/problems/sign-in-needed' });
    equal([outcome, heard], ['Problem', ['sign-in-needed']]);
  },
  async a_notebook_that_is_stopping_is_away() {
    equal((await sent(503, { type: '/problems/stopping' })).outcome, 'Away');
  },
};
