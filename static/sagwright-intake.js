// Defines <sagwright-intake>: the questions and the advice in a frame on a workshop's own page. docs/embedding.md says how
// it is used, what it tells, and every message that goes over the line between the two pages.

const APP = "sagwright";
const VERSION = 1;

// Where this script lies is the site, unless the element says otherwise.
const SITE = new URL(".", import.meta.url).href;

// The look is passed as values under these names: each is read from the custom property --sagwright-NAME of the element.
const LOOK = ["accent", "colours", "corner", "font", "text"];
const LONGEST_VALUE = 64;

// What a frame may be allowed. The first one has to be, or nothing runs in it.
const RIGHTS = [
  "allow-scripts",
  "allow-same-origin",
  "allow-forms",
  "allow-downloads",
  "allow-modals",
  "allow-popups",
];
const ORIGIN_RIGHT = "allow-same-origin";
// The origin of a frame that has none.
const NAMELESS = "null";

// Longest message, UTF-16 units. The answers have at most 32 kB, and the advice is some 400 kB.
const LARGEST = 4_000_000;
// How long the frame may stay silent after it was put on the page, ms.
const PATIENCE = 30_000;
// Between these heights the frame follows its content, px.
const LOWEST = 200;
const HIGHEST = 100_000;

const NAME = /^[\w.-]{1,64}$/;
const WORD = /^[a-z0-9-]{1,64}$/;

const isObject = (value) => typeof value === "object" && value !== null && !Array.isArray(value);

// Each reason stands in the console once, or a page full of messages would fill it.
const logged = new Set();
const ignore = (reason) => {
  if (logged.has(reason)) return;
  logged.add(reason);
  console.warn(`A message to <sagwright-intake> is ignored: ${reason}.`);
};

// Every element on the page, by the window in its frame.
const elements = new Map();

addEventListener("message", (event) => {
  const element = elements.get(event.source);
  if (element) element.hear(event);
  // Pages get all kinds of messages; only one that pretends to be ours is worth a word.
  else if (typeof event.data === "string" && event.data.slice(0, 200).includes(`"${APP}"`)) {
    ignore("it came from a window that is not ours");
  }
});

// The message, or a word about why it is none.
const read = (data) => {
  if (typeof data !== "string") return "it is no text";
  if (data.length > LARGEST) return "it is too long";
  let message;
  try {
    message = JSON.parse(data);
  } catch {
    return "it is no JSON";
  }
  if (!isObject(message) || message.app !== APP) return "it is no message of Sagwright";
  if (message.version !== VERSION) return `it is of version ${Number(message.version)} and not ${VERSION}`;
  if (!NAME.test(message.frame) || !Number.isSafeInteger(message.number)) return "it has no name or number";
  return message;
};

class SagwrightIntake extends HTMLElement {
  #frame;
  #origin;
  #patience;
  #dark = matchMedia("(prefers-color-scheme: dark)");
  // The page in the frame: the name that it gave itself, and the last numbers heard from it and said to it.
  #name;
  #heard = 0;
  #said = 0;
  // Names of pages that were in the frame before.
  #gone = new Set();
  #steps = 0;

  connectedCallback() {
    const root = this.shadowRoot ?? this.attachShadow({ mode: "open" });
    const asked = this.getAttribute("sandbox");
    const rights = RIGHTS.filter((right, at) => at === 0 || asked === null || asked.split(/\s+/).includes(right));
    const address = new URL(this.getAttribute("site") ?? SITE, document.baseURI);
    for (const name of ["workshop", "lang"]) {
      if (this.hasAttribute(name)) address.searchParams.set(name, this.getAttribute(name));
    }
    this.#origin = rights.includes(ORIGIN_RIGHT) ? address.origin : NAMELESS;
    const frame = document.createElement("iframe");
    frame.setAttribute("part", "frame");
    frame.title = this.getAttribute("label") ?? "Sagwright";
    frame.setAttribute("sandbox", rights.join(" "));
    // Named only where the browser knows it, or it complains.
    frame.allow = navigator.share ? "clipboard-write; web-share" : "clipboard-write";
    frame.referrerPolicy = "no-referrer";
    // Set one by one: a page with a strict policy lets in no style as text.
    Object.assign(frame.style, { display: "block", width: "100%", height: "40rem", border: "0" });
    // What stands in the element is for browsers without this script, and for when nothing answers.
    const rest = document.createElement("slot");
    rest.hidden = true;
    frame.src = address;
    root.replaceChildren(rest, frame);
    if (!this.style.display) this.style.display = "block";
    this.#frame = frame;
    this.#name = undefined;
    elements.set(frame.contentWindow, this);
    this.#dark.addEventListener("change", this.wear);
    this.#patience = setTimeout(() => {
      rest.hidden = false;
      this.#tell("error", { reason: "no-answer" });
    }, PATIENCE);
  }

  disconnectedCallback() {
    clearTimeout(this.#patience);
    this.#dark.removeEventListener("change", this.wear);
    for (const [window, element] of elements) if (element === this) elements.delete(window);
  }

  // Has the frame wear the look that the element has now. For pages that change their colours.
  wear = () => this.#name && this.#say("look", { look: this.#look() });

  hear({ origin, data }) {
    if (origin !== this.#origin) return ignore(`it came from ${origin} and not from ${this.#origin}`);
    const message = read(data);
    if (typeof message === "string") return ignore(message);
    if (message.kind === "hello") return this.#greet(message);
    if (message.frame !== this.#name) return ignore("it is from a page that is gone");
    if (message.number <= this.#heard) return ignore("a message of that number was here before");
    this.#heard = message.number;
    const heed = { ready: this.#ready, height: this.#height, step: this.#step, finished: this.#finished, error: this.#error };
    if (!Object.hasOwn(heed, message.kind)) return ignore("its kind is unknown");
    if (heed[message.kind].call(this, message) === false) ignore("something in it is missing or wrong");
  }

  // A page is in the frame: another one than before, or the same one loaded anew.
  #greet({ frame, number }) {
    if (frame === this.#name || this.#gone.has(frame)) return ignore("a message of that number was here before");
    if (this.#name) this.#gone.add(this.#name);
    [this.#name, this.#heard, this.#said, this.#steps] = [frame, number, 0, 0];
    clearTimeout(this.#patience);
    this.shadowRoot.querySelector("slot").hidden = true;
    this.#say("begin", { look: this.#look() });
  }

  #ready({ lang }) {
    if (!WORD.test(lang)) return false;
    this.#tell("ready", { lang });
  }

  #height({ height }) {
    if (!Number.isFinite(height)) return false;
    const clamped = Math.min(Math.max(height, LOWEST), HIGHEST);
    this.#frame.style.height = `${clamped}px`;
    this.#tell("resized", { height: clamped });
  }

  #step({ step }) {
    if (!WORD.test(step)) return false;
    // The frame is as high as its content, so it is this page that has to go back to the top of it.
    if (this.#steps++ > 0 && this.getBoundingClientRect().top < 0) this.scrollIntoView();
    this.#tell("step", { step });
  }

  #finished({ parcel, advice }) {
    if (!isObject(parcel) || !isObject(parcel.intake) || !isObject(advice) || !NAME.test(parcel.id)) return false;
    const answer = (kind) => () => this.#say(kind, { id: parcel.id });
    const [taken, refused] = [answer("taken"), answer("refused")];
    this.#tell("finished", { parcel, intake: parcel.intake, advice, taken, refused });
  }

  #error({ reason }) {
    if (!WORD.test(reason)) return false;
    this.#tell("error", { reason });
  }

  #look() {
    const style = getComputedStyle(this);
    const values = LOOK.map((name) => [name, style.getPropertyValue(`--sagwright-${name}`).trim()]);
    return Object.fromEntries(values.filter(([, value]) => value && value.length <= LONGEST_VALUE));
  }

  #say(kind, rest) {
    this.#said += 1;
    const message = { app: APP, version: VERSION, kind, frame: this.#name, number: this.#said, ...rest };
    // A frame without an origin cannot be named. What goes there holds no answers.
    const to = this.#origin === NAMELESS ? "*" : this.#origin;
    this.#frame.contentWindow?.postMessage(JSON.stringify(message), to);
  }

  #tell(event, detail) {
    this.dispatchEvent(new CustomEvent(event, { detail }));
  }
}

customElements.define("sagwright-intake", SagwrightIntake);
