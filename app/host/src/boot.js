// The first script of a page and of its worker: gets hold of the program's one WebAssembly file and runs its `main`.
// It is a file of its own because the Content-Security-Policy allows no inline script.
import init from "./{{name PROGRAM.js}}";

// Colours chosen on an earlier visit are worn before the program has arrived. Storage may be blocked.
try {
  const theme = globalThis.document && localStorage.getItem("sagwright.theme");
  if (theme && theme !== "device") document.documentElement.dataset.theme = theme;
} catch {}

// A worker is handed what the page has compiled, so that nothing is downloaded or compiled twice.
const handedOver = () =>
  new Promise((take) => addEventListener("message", (message) => take(message.data), { once: true }));

const downloaded = () =>
  fetch(new URL("./{{name PROGRAM.wasm}}", import.meta.url), {
    integrity: "{{integrity PROGRAM.wasm}}",
    credentials: "same-origin",
  });

try {
  await init({ module_or_path: globalThis.document ? downloaded() : handedOver() });
} catch (trouble) {
  const notice = globalThis.document?.getElementById("boot-failed");
  if (notice) notice.hidden = false;
  throw trouble;
}
