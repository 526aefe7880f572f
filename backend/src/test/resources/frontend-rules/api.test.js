import { Away, answered, get } from '/api.js';
import { Backups } from '/parts/backups.js';
import { equal } from './expect.js';
import { answering, settled } from './notebook.js';

export const tests = {
  a_page_of_somebody_in_between_is_no_answer_of_the_notebook() {
    let failure = null;
    try {
      answered(200, '<!doctype html><title>Sign in to the network</title>');
    } catch (thrown) {
      failure = thrown;
    }
    equal(failure instanceof Away, true);
    equal([answered(204, ''), answered(200, '{"items":[]}')], [null, { items: [] }]);
  },
  async a_backup_is_waited_for_longer_than_an_answer() {
    const timeout = AbortSignal.timeout;
    const patience = [];
    AbortSignal.timeout = (millis) => (patience.push(millis), timeout.call(AbortSignal, millis));
    try {
      await answering(async (asked) => {
        const part = Backups();
        await asked[0].answer({ daily: true, items: [] });
        part.querySelector('button').click();
        await settled();
        get('/api/me').catch(() => {});
        equal(patience[1] > 5 * patience[2], true);
        for (const each of asked.slice(1)) await each.fail();
      });
    } finally {
      AbortSignal.timeout = timeout;
    }
  },
};
