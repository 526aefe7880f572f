/**
 * sign-outs.js: nobody sees, by going back, what was shown before somebody signed out. A browser may bring a page back as it was, without
 * asking the server; then the page itself notices, and is asked for again.
 */
const KEY = 'rosinbook.signed-out-at';
const whenDrawn = last();

/** Somebody signs out in this browser: what any tab of it has shown until now is not shown again. */
export function noteSignOut() {
  try {
    localStorage.setItem(KEY, String(Date.now()));
  } catch {
    // Without a store nothing can be noticed here.
  }
}

function last() {
  try {
    return localStorage.getItem(KEY);
  } catch {
    return null;
  }
}

addEventListener('pageshow', (event) => {
  if (!event.persisted || last() === whenDrawn) return;
  document.documentElement.hidden = true;
  location.reload();
});
