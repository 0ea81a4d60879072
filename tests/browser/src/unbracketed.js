// Every text on the page with a word in it that did not come from the table of sentences.
// "zzzzz" ends a sentence that was cut into lines; MAX stands on a part; the note of an invented rider is its own words.
const OWN = /^(Sagwright|Auto|English|Deutsch|Español|Français|MAX)$|^Invented rider|zzzzz/;
const UNITS = /^[\d\s.,–−+…×/:()%-]*(kgf?\/mm|kgf?|N\/mm|lbf?\/in|lbf?|bar|psi|kPa|mm|in|cm|N|°[CF]|ft|m|s|h)?$/;
const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
const found = [];
for (let node = walker.nextNode(); node; node = walker.nextNode()) {
  const text = node.textContent.trim();
  const around = node.parentElement;
  if (!/\p{L}{2}/u.test(text) || around.closest("script, style, noscript, textarea, [hidden]")) continue;
  if (OWN.test(text) || UNITS.test(text.replace(/[\u202f\u00a0]/g, " "))) continue;
  if (!around.textContent.includes("⟦")) found.push(text.slice(0, 60));
}
return found;
