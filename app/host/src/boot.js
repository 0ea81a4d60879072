// The first script of a program, on a page and in its worker: gets hold of the one WebAssembly file and runs its `main`.
// It is a file of its own because the Content-Security-Policy allows no inline script.

// Colours chosen on an earlier visit are worn before the program has arrived. Storage may be blocked.
try {
  const theme = globalThis.document && localStorage.getItem("sagwright.theme");
  if (theme && theme !== "device") document.documentElement.dataset.theme = theme;
} catch {}

// Whoever comes for another page is not shown the first one on the way.
if (globalThis.document && location.hash.length > "#/".length) document.documentElement.dataset.elsewhere = "";

// In a frame on another page, much of what stands around the questions is not drawn.
if (globalThis.document && parent !== self) document.documentElement.dataset.framed ??= "";

// A worker is handed what the page has compiled, so that nothing is downloaded or compiled twice.
const handedOver = () =>
  globalThis.handedOver ??
  new Promise((take) => addEventListener("message", (message) => take(message.data), { once: true }));

const downloaded = () =>
  fetch(new URL("./{{name PROGRAM.wasm}}", import.meta.url), {
    integrity: "{{integrity PROGRAM.wasm}}",
    credentials: "same-origin",
  });

// On a quick line the program would be there before the browser has painted what stands on the page without it, so it is asked
// for after that. On a slow one, where this script took 0.4 s to come, it comes later anyway, and is asked for at once. What is
// not painted, as a page behind others or a frame out of sight, is not waited for, and a browser that does not tell is waited
// for 0.2 s.
const painted = () =>
  new Promise((done) => {
    if (performance.now() > 400 || document.hidden || parent !== self) return done();
    new PerformanceObserver(done).observe({ type: "paint", buffered: true });
    setTimeout(done, 200);
  });

// The style sheet of a program that has no page of its own to name it.
const STYLE = { href: "STYLE_NAME", integrity: "STYLE_INTEGRITY" };
const dressed = () =>
  new Promise((done, failed) => {
    const { href, integrity } = STYLE;
    const address = new URL(`./${href}`, import.meta.url).href;
    // To a frame without an origin its own site is another one.
    const how = { rel: "stylesheet", crossOrigin: "anonymous", integrity, href: address };
    const link = Object.assign(document.createElement("link"), how);
    link.addEventListener("load", done);
    link.addEventListener("error", failed);
    document.head.append(link);
  });

try {
  // Asked for before the first wait: what a worker is handed comes but once.
  const program = globalThis.document ? painted().then(downloaded) : handedOver();
  // A script that runs as soon as it has come may be there before the end of its page.
  if (globalThis.document?.readyState === "loading")
    await new Promise((done) => document.addEventListener("DOMContentLoaded", done));
  // Whoever tries again gives this script another address by what stands after `?`, and the module gets it too, since browsers
  // remember what did not arrive.
  const [{ default: init }] = await Promise.all([
    import("./{{name PROGRAM.js}}" + new URL(import.meta.url).search),
    STYLE.href && globalThis.document ? dressed() : undefined,
  ]);
  await init({ module_or_path: program });
} catch (trouble) {
  const notice = globalThis.document?.getElementById("PROGRAM-failed");
  if (notice) notice.hidden = false;
  // Whoever put this script on the page listens there.
  const own = [...(globalThis.document?.scripts ?? [])].find(({ src }) => src === import.meta.url);
  own?.dispatchEvent(new Event("error"));
  throw trouble;
}
