/** people.js: which notebooks there are, who may read or write in the open one, who plays here, and one's own sign-ins. */
import { get } from '../api.js';
import { el } from '../dom.js';
import { me, meet } from '../me.js';
import { MemberList } from '../parts/member-list.js';
import { MyAccount } from '../parts/my-account.js';
import { NotebookList } from '../parts/notebook-list.js';
import { PageHead } from '../parts/page-head.js';
import { PlayerList } from '../parts/player-list.js';

export async function show(page) {
  page.title('People');
  if (!me()) {
    // Whoever comes here must know; what went wrong is shown instead of the page.
    await get('/api/me');
    await meet();
  }
  const { local, keeper, notebook } = me();
  PageHead(page.leaf, { title: 'People', lead: local ? 'The notebooks on this computer.' : 'Whose notebooks these are, and who may read and write in them.' });
  const members = local || !notebook ? null : MemberList();
  const parts = [
    NotebookList({ onRenamed: () => members?.draw() }),
    members,
    keeper && !local ? PlayerList({ onChanged: () => members?.draw() }) : null,
    local ? null : MyAccount(),
  ].filter(Boolean);
  page.leaf.append(...parts.map(({ element }) => element));
  if (local) page.leaf.append(el('p', { class: 'pencil' }, 'At this computer nobody signs in. Players can be invited, each with notebooks of their own, once Rosinbook can be reached from elsewhere. How to do that is told in the guide that came with it, under “For a band”.'));
  await Promise.all(parts.map((part) => part.draw()));
}
