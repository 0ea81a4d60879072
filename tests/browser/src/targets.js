// How many things on the page can be pressed, and which of them are smaller than 48 CSS pixels either way.
(() => {
  const least = 48;
  const shown = (node) => node.checkVisibility({ visibilityProperty: true }) && node.getClientRects().length > 0;
  // What is pressed for a radio button or checkbox is its whole label.
  const target = (node) =>
    node.matches("[type=radio], [type=checkbox]") ? (node.closest("label") ?? node) : node;
  // A link with words around it in the same line of text.
  const inSentence = (node) => {
    if (!node.matches("a, button") || getComputedStyle(node).display !== "inline") return false;
    const around = [...node.parentNode.childNodes].filter((other) => other !== node);
    return around.some((other) => other.textContent.trim().length > 1);
  };
  const pressed = [...document.querySelectorAll("a[href], button, summary, input, select, textarea, [role=button]")]
    .filter((node) => !node.disabled && shown(node))
    .map(target)
    // The link that skips to the question lies over the top of the page until it has the focus.
    .filter((node) => node.getBoundingClientRect().bottom + scrollY > 0 && !inSentence(node));
  const small = pressed
    .map((node) => [node, node.getBoundingClientRect()])
    .filter(([, box]) => box.width < least - 0.5 || box.height < least - 0.5)
    .map(([node, box]) => `${box.width.toFixed(1)} x ${box.height.toFixed(1)}: ${node.outerHTML.slice(0, 160)}`);
  return { count: pressed.length, small };
})()
