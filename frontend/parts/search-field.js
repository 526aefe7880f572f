/**
 * search-field.js: searches while one types. The newest question wins; older answers are dropped.
 *
 *   SearchField(element, { label: 'Find a piece', words: '', onSearch: async (words, signal) => { … } })
 *
 * onSearch gets the trimmed words and a signal that is aborted when newer words arrive; its trouble is shown here.
 */
import { el, fill } from '../dom.js';

const PAUSE_MILLIS = 160;

/**
 * @param {HTMLElement} element
 * @param {{ label: string, words?: string, onSearch: (words: string, signal: AbortSignal) => Promise<void> | void }} state
 * @returns {{ focus: () => void, words: () => string }}
 */
export function SearchField(element, { label, words = '', onSearch }) {
  let pause = 0;
  let asked = new AbortController();
  const input = el('input', { type: 'search', value: words, placeholder: label, 'aria-label': label, autocomplete: 'off', spellcheck: 'false', maxlength: 200 });
  const trouble = el('p', { class: 'unsafe small', role: 'status' });
  input.addEventListener('input', () => {
    clearTimeout(pause);
    pause = setTimeout(ask, PAUSE_MILLIS);
  });
  input.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    clearTimeout(pause);
    ask();
  });
  element.classList.add('search-field');
  fill(element, input, trouble);
  return { focus: () => input.focus(), words: () => input.value.trim() };

  async function ask() {
    asked.abort();
    asked = new AbortController();
    const { signal } = asked;
    try {
      await onSearch(input.value.trim(), signal);
      trouble.textContent = '';
    } catch (failure) {
      if (!signal.aborted) trouble.textContent = failure.message;
    }
  }
}
