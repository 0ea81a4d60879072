// Makes a language of every sentence in brackets, two fifths longer, with accents: what is not in brackets on a page was not
// taken from the table of sentences, and what does not fit would not fit in a longer language.
const accents = { a: "á", e: "ë", i: "ï", o: "ø", u: "ü", n: "ñ", c: "ç" };
const longer = (sentence) => {
  const parts = sentence.split(/(\{[^}]*\})/);
  const said = parts.map((part) => (part.startsWith("{") ? part : part.replace(/[aeiounc]/g, (letter) => accents[letter])));
  const more = Math.ceil((0.4 * sentence.length) / 6);
  return `⟦${said.join("").replaceAll("\n", "\n⟦")}${" zzzzz".repeat(more)}⟧`;
};
const honest = window.fetch.bind(window);
window.fetch = async (asked, how) => {
  const answer = await honest(asked, how);
  if (!String(asked).includes("words-de-")) return answer;
  const sentences = await answer.json();
  const said = Object.fromEntries(Object.entries(sentences).map(([key, sentence]) => [key, longer(sentence)]));
  return new Response(JSON.stringify(said), { status: 200, headers: { "content-type": "application/json" } });
};
