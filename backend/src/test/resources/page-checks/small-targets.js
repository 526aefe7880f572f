// Targets below 44 by 44 CSS px (WCAG 2.2, 2.5.5). Let pass: a link in a line of text (2.5.5 and 2.5.8, "inline"), and one
// that is spaced as 2.5.8 asks: a circle of 24 px on its middle meets no other target and no other small target's circle.
(controls) => {
  const LEAST = 43.5;
  const RADIUS = 12;
  const floats = (element) => {
    for (let at = element; at; at = at.parentElement) if (/fixed|sticky/.test(getComputedStyle(at).position)) return true;
    return false;
  };
  const targets = controls.filter((control) => !control.matches('.skip, [role=region]')).map((control) => {
    const touched = control.matches('input[type=radio], input[type=checkbox]') ? control.closest('label') ?? control : control;
    const { left, right, top, bottom } = touched.getBoundingClientRect();
    return { touched, floats: floats(touched), left, right, top, bottom, x: (left + right) / 2, y: (top + bottom) / 2, isSmall: right - left < LEAST || bottom - top < LEAST };
  });
  const isInline = ({ touched }) => touched.matches('a') && getComputedStyle(touched).display === 'inline'
    && [...touched.parentElement.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim());
  const meets = (one, other) => {
    // What the page scrolls beneath is met only until it is scrolled.
    if (one.floats !== other.floats) return false;
    if (one === other || one.touched.contains(other.touched) || other.touched.contains(one.touched)) return false;
    if (other.isSmall && Math.hypot(one.x - other.x, one.y - other.y) < 2 * RADIUS) return true;
    const across = Math.max(other.left - one.x, 0, one.x - other.right);
    const down = Math.max(other.top - one.y, 0, one.y - other.bottom);
    return Math.hypot(across, down) < RADIUS;
  };
  return targets
    .filter((target) => target.isSmall && !isInline(target))
    .filter((target) => targets.some((other) => meets(target, other)))
    .map(({ touched, left, right, top, bottom }) => `${Math.round(right - left)} × ${Math.round(bottom - top)}: ${touched.outerHTML.slice(0, 140)}`);
}
