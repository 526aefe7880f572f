// A walk with the Tab key: look(control) notes how each control stands without the focus; stop() tells where the focus is.
(controls) => {
  const parts = (control) => [control, control.closest('label'), control.nextElementSibling].filter(Boolean);
  const look = (control) => parts(control).map((part) => {
    const { outlineStyle, outlineWidth, boxShadow, borderBottomColor, backgroundColor } = getComputedStyle(part);
    return [outlineStyle === 'none' ? 'none' : outlineWidth, boxShadow, borderBottomColor, backgroundColor].join(' ');
  }).join('|');
  const unfocused = new Map(controls.map((control) => [control, look(control)]));
  const left = new Set(controls);
  const complaints = [];
  let before = null;
  const words = (control) => control.outerHTML.slice(0, 140);
  const isHidden = (control) => {
    const { left: x, top: y, width, height } = (control.matches('[type=radio], [type=checkbox]') ? control.closest('label') ?? control : control).getBoundingClientRect();
    return [[0.5, 0.5], [0.5, 0.1], [0.5, 0.9], [0.1, 0.5], [0.9, 0.5]].every(([across, down]) => {
      const top = document.elementFromPoint(x + across * width, y + down * height);
      return !top || !(control.contains(top) || top.contains(control) || control.closest('label')?.contains(top));
    });
  };
  const floats = (control) => {
    for (let at = control; at; at = at.parentElement) if (/fixed|sticky|absolute/.test(getComputedStyle(at).position) && at !== document.body) return true;
    return false;
  };
  const place = (control) => {
    const { left: x, right, top, bottom } = control.getBoundingClientRect();
    return { control, left: x, right, top: top + scrollY, bottom: bottom + scrollY };
  };
  const stop = () => {
    const control = document.activeElement;
    if (!control || control === document.body || control === document.documentElement) return 'out';
    if (!left.has(control)) return unfocused.has(control) ? 'again' : `strange ${words(control)}`;
    left.delete(control);
    if (look(control) === unfocused.get(control)) complaints.push(`the focus cannot be seen on ${words(control)}`);
    if (isHidden(control)) complaints.push(`something lies over ${words(control)}`);
    if (!floats(control)) {
      const now = place(control);
      if (before && now.bottom <= before.top + 2 && now.left < before.right - 2) complaints.push(`${words(control)} comes after what stands below it: ${words(before.control)}`);
      before = now;
    }
    return 'on';
  };
  return { stop, complaints, unreached: () => [...left].map((control) => `the Tab key does not reach ${words(control)}`) };
}
