import { onAnswer } from '/api.js';
import { measureReadings, measureUpload } from '/level-requests.js';
import { showNotebook } from '/tab-notebook.js';
import { equal } from './expect.js';
import { answering } from './notebook.js';

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

/** Measures an upload; how far it was is asked while it is under way and answered when it is done. */
async function measuredMeanwhile() {
  const { XMLHttpRequest, setInterval, clearInterval } = globalThis;
  const told = [];
  let ask;
  let finish;
  globalThis.setInterval = (act) => { ask = act; };
  globalThis.clearInterval = () => {};
  globalThis.XMLHttpRequest = class extends EventTarget {
    upload = new EventTarget();
    status = 200;
    responseText = '{"advice":[]}';
    open() {}
    setRequestHeader() {}
    send() {
      finish = () => this.dispatchEvent(new Event('load'));
    }
  };
  try {
    await answering(async (asked) => {
      const outcome = measureUpload('u1', {}, [], (fraction) => told.push(fraction));
      ask();
      await asked[0].answer({ fraction: 0.4 });
      ask();
      finish();
      await outcome;
      await asked[1].answer({ fraction: 0.9 });
    });
  } finally {
    Object.assign(globalThis, { XMLHttpRequest, setInterval, clearInterval });
  }
  return told;
}

export const tests = {
  async what_was_asked_while_it_was_measured_is_not_told_afterwards() {
    equal(await measuredMeanwhile(), [0.4]);
  },
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
