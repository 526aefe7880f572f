import { Keeping } from '/save.js';
import { SaveBar } from '/parts/save-bar.js';
import { equal } from './expect.js';

/** A new piece with its save bar, while the notebook answers in turn with what is given, or is away for null. */
async function bar(answers, work) {
  localStorage.clear();
  const fetched = globalThis.fetch;
  globalThis.fetch = async () => {
    const answer = answers.shift();
    if (!answer) throw new TypeError('nobody answers');
    return new Response(JSON.stringify(answer));
  };
  const leaf = document.createElement('div');
  const keeping = new Keeping('pieces', 'a', null, null);
  const saved = [];
  SaveBar(leaf, keeping, { onSaved: ({ revision }) => saved.push(revision) });
  try {
    await work(keeping, leaf.querySelector('button.inked'), saved);
  } finally {
    keeping.leave();
    globalThis.fetch = fetched;
    localStorage.clear();
    document.querySelector('.conflict-dialog')?.remove();
  }
}

const settled = () => new Promise((resolve) => { setTimeout(resolve, 20); });

export const tests = {
  async a_page_hears_of_a_save_once_it_is_through() {
    await bar([{ revision: 1, content: { title: 'Reel' } }, { revision: 2, content: { title: 'Jig' } }], async (keeping, button, saved) => {
      keeping.change((content) => { content.title = 'Reel'; });
      button.click();
      await settled();
      equal([saved, keeping.state], [[1], 'saved']);
      keeping.change((content) => { content.title = 'Jig'; });
      button.click();
      await settled();
      equal([saved, keeping.state], [[1, 2], 'saved']);
    });
  },
  async a_page_that_cannot_show_a_log_entry_says_that_one_goes_with_it() {
    await bar([], async (keeping, button) => {
      keeping.extra = { log: { text: 'The D buzzes' } };
      keeping.touch();
      equal(button.closest('.save-bar').querySelector('.more a').getAttribute('href'), '/new/log?rig=a');
    });
  },
  async a_page_hears_of_a_save_that_had_to_wait() {
    await bar([null, { revision: 1, content: { title: 'Reel' } }], async (keeping, button, saved) => {
      keeping.change((content) => { content.title = 'Reel'; });
      button.click();
      await settled();
      equal([saved, keeping.state], [[], 'away']);
      dispatchEvent(new Event('online'));
      await settled();
      equal([saved, keeping.state], [[1], 'saved']);
    });
  },
};
