import { get } from '../api.js';
import { el } from '../dom.js';
import { PageHead } from '../parts/page-head.js';

export async function show(page) {
  const tonight = await get('/api/tonight');
  page.title('Tonight');
  PageHead(page.leaf, { title: tonight.empty ? 'A new notebook' : tonight.next?.title ?? 'Tonight' });
  page.leaf.append(el('p', {}, tonight.comparison?.summary ?? ''));
}
