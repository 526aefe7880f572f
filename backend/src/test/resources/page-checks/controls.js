// Whatever can be worked, in the order of the document; of a group of radio buttons the one that the Tab key reaches.
() => {
  const group = ({ form, name, type }) => [...document.querySelectorAll('input[type=radio]')].filter((each) => type === 'radio' && each.form === form && each.name === name);
  const isStop = (control) => {
    if (control.type !== 'radio') return true;
    const all = group(control);
    return control === (all.find((each) => each.checked) ?? all[0]);
  };
  return [...document.querySelectorAll('a[href], button, input, select, textarea, summary, [tabindex="0"]')]
    .filter((control) => !control.disabled && control.tabIndex >= 0)
    .filter((control) => control.checkVisibility({ visibilityProperty: true }) && control.getClientRects().length > 0)
    .filter(isStop);
}
