// Finds what a person would mean by a text: visible, and named by it for people who see and people who do not.
// arguments: the kind sought, the text, and optionally the legend or heading of the group it stands in.
const [kind, wanted, group] = arguments;
const plain = (text) => (text ?? "").replace(/\s+/g, " ").trim();
const seen = (node) => node.checkVisibility({ visibilityProperty: true }) && node.getClientRects().length > 0;
const byIds = (ids) =>
  plain((ids ?? "").split(/\s+/).map((id) => document.getElementById(id)?.textContent).join(" "));
// A label's own words, without those of a control, hint or unit switch nested in it.
const labelWords = (label) => {
  const copy = label.cloneNode(true);
  copy.querySelectorAll("input, select, textarea, button").forEach((inner) => inner.remove());
  return plain(copy.textContent);
};
const names = (node) => [
  byIds(node.getAttribute("aria-labelledby")),
  plain(node.getAttribute("aria-label")),
  ...[...(node.labels ?? [])].map(labelWords),
  plain(node.innerText ?? node.textContent),
  node.matches("input[type=submit], input[type=button]") ? plain(node.value) : "",
];
const selectors = {
  control: "button, a[href], summary, [role=button], [role=link], [role=tab], input[type=submit], input[type=button]",
  field: "input:not([type=radio]):not([type=checkbox]), textarea, select, [role=spinbutton], [role=textbox]",
  choice: "input[type=radio], input[type=checkbox], [role=radio], [role=checkbox], [role=switch]",
};
let within = document;
if (group) {
  within = [...document.querySelectorAll("fieldset, [role=group], [role=radiogroup], section")].findLast((box) => {
    const title = box.querySelector(":scope > legend, :scope > h2, :scope > h3, :scope > header");
    return [byIds(box.getAttribute("aria-labelledby")), plain(box.getAttribute("aria-label")), plain(title?.textContent)]
      .some((name) => name.startsWith(group));
  });
  if (!within) return null;
}
// A choice may be drawn by its label alone, the input itself hidden from sight.
const shown = (node) => seen(node) || [...(node.labels ?? [])].some(seen);
const all = [...within.querySelectorAll(selectors[kind])].filter((node) => shown(node) && !node.disabled);
const exact = all.filter((node) => names(node).includes(wanted));
const starting = all.filter((node) => names(node).some((name) => name.startsWith(wanted)));
const found = exact[0] ?? (starting.length === 1 ? starting[0] : null);
if (!found) return null;
const target = kind === "choice" && !seen(found) ? [...found.labels].find(seen) : found;
target.scrollIntoView({ block: "center", behavior: "instant" });
return target;
