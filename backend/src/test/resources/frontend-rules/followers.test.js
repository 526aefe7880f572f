import { FollowersDialog } from '/parts/followers-dialog.js';
import { equal } from './expect.js';

const FOLLOWER = { follows: 4, changes: [] };
const CHANGE = { pointer: '/a', where: ['Level'], change: 'changed', was: '80', now: '70' };

/** What stays when the dialog is answered as it opens. */
async function stays(followers, look = () => {}) {
  const answer = FollowersDialog(followers, { title: 'Everyday', revision: 4 });
  const dialog = document.querySelector('.followers-dialog');
  try {
    look(dialog);
  } finally {
    dialog.querySelector('button[value=save]').click();
  }
  return answer;
}

export const tests = {
  async a_recipe_that_cannot_follow_says_why_and_stays() {
    const followers = [
      { ...FOLLOWER, id: 'a', title: 'Reel', changes: [CHANGE] },
      { ...FOLLOWER, id: 'b', title: 'Air', problem: 'there is no effect "delay" in this starting point' },
    ];
    const staying = await stays(followers, (dialog) => {
      equal(dialog.querySelector('h2').textContent, '1 recipe would sound different');
      equal(dialog.querySelector('h3').textContent, '1 recipe cannot follow on');
      equal(dialog.querySelector('.unsafe').textContent, 'There is no effect "delay" in this starting point.');
      equal(dialog.textContent.includes('would sound the same'), false);
      equal(dialog.querySelectorAll('[name=b]').length, 1);
    });
    equal(staying, ['b']);
  },
  async a_recipe_that_stayed_before_is_not_moved_on_by_the_way() {
    equal(await stays([{ ...FOLLOWER, id: 'a', title: 'Reel', follows: 3 }, { ...FOLLOWER, id: 'b', title: 'Air' }]), ['a']);
  },
};
