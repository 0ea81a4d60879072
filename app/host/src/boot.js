// The first script of the page and of every worker: fetches the one WebAssembly file and runs its `main`.
// It is a file of its own because the Content-Security-Policy allows no inline script.
import init from "./{{name app.js}}";

try {
  const answer = fetch(new URL("./{{name app.wasm}}", import.meta.url), {
    integrity: "{{integrity app.wasm}}",
    credentials: "same-origin",
  });
  await init({ module_or_path: answer });
} catch (trouble) {
  const notice = globalThis.document?.getElementById("boot-failed");
  if (notice) notice.hidden = false;
  throw trouble;
}
