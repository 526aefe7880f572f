// What stands out of the page to the left or the right. The body clips, so the document's scroll width would not tell.
() => {
  const width = document.documentElement.clientWidth;
  const scrolls = (element) => {
    for (let at = element.parentElement; at && at !== document.body; at = at.parentElement) {
      if (getComputedStyle(at).overflowX !== 'visible') return true;
    }
    return false;
  };
  return [...document.querySelectorAll('body *')]
    .filter((element) => element.checkVisibility({ visibilityProperty: true }) && !element.closest('.unseen, .skip'))
    .filter((element) => {
      const { left, right } = element.getBoundingClientRect();
      return (right > width + 1 || left < -1) && right > left && !scrolls(element);
    })
    .map((element) => {
      const { left, right } = element.getBoundingClientRect();
      return `${element.outerHTML.slice(0, 120)} from ${left} to ${right}`;
    });
}
