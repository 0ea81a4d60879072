// Gives the focus to everything that takes it, in turn, and names what then cannot be seen: beside the window, or
// under something else. The focus ends where it was.
(() => {
  const before = document.activeElement;
  const shown = (node) => node.checkVisibility({ visibilityProperty: true }) && node.getClientRects().length > 0;
  const takers = [...document.querySelectorAll("a[href], button, summary, input, select, textarea, [tabindex='0']")]
    .filter((node) => !node.disabled && shown(node));
  const hidden = [];
  for (const node of takers) {
    node.focus();
    const box = node.getBoundingClientRect();
    const [left, right] = [Math.max(box.left, 0), Math.min(box.right, innerWidth)];
    const [top, bottom] = [Math.max(box.top, 0), Math.min(box.bottom, innerHeight)];
    const over = right > left && bottom > top ? document.elementFromPoint((left + right) / 2, (top + bottom) / 2) : null;
    const own = over && (node.contains(over) || over.contains(node) || node.closest("label")?.contains(over));
    if (!own) hidden.push(`${node.outerHTML.slice(0, 120)} under ${over?.outerHTML.slice(0, 80) ?? "the window's edge"}`);
  }
  if (before instanceof HTMLElement) before.focus();
  return hidden;
})()
