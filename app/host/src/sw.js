// Keeps all that a rider needs on the device, so that it opens and computes where there is no signal. What only a
// workshop needs is kept from its first visit that comes through here.
//
// The build writes this file anew with the list of its own files, so a browser that finds it changed knows that there
// is a new build. It downloads that beside the one at work, and waits until the rider says to use it, or until no
// page is open any more.

const BUILD = "{{build}}";
// Name and integrity of every file of this build.
const FILES = new Map({{files}});
// The same of the sentences of languages: only one that was ever asked for is kept.
const TABLES = new Map({{tables}});
// The page itself, as browsers ask for it.
const PAGE = "./";

const SCOPE = self.registration.scope;
// Another copy of the site may lie elsewhere on the same host.
const OURS = `sagwright ${SCOPE} `;
const CACHE = OURS + BUILD;
const address = (name) => new URL(name, SCOPE).href;

const kept = async (name, cacheName) => caches.match(address(name), { cacheName, ignoreVary: true });

const download = async (cache, name, integrity) => {
  // A name with a fingerprint stands for one content, so what an older build kept is not downloaded again.
  let file = name === PAGE ? undefined : await kept(name);
  if (!file) {
    const cacheMode = name === PAGE ? "no-cache" : "default";
    file = await fetch(address(name), { integrity, cache: cacheMode, credentials: "same-origin" });
    if (!file.ok) throw new Error(`${name}: ${file.status}`);
  }
  await cache.put(address(name), file);
};

// A language that an older build keeps is spoken here, so the new build brings it too.
const language = (name) => name.split("-").slice(0, 2).join("-");
const tablesInUse = async () => {
  const names = (await caches.keys()).filter((name) => name.startsWith(OURS));
  const stored = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
  const spoken = new Set(stored.flat().map(({ url }) => language(url.slice(SCOPE.length))));
  return [...TABLES].filter(([name]) => spoken.has(language(name)));
};

// All or nothing: where a file does not arrive whole, this build is dropped and the one at work stays at work. The
// browser tries again on a later visit.
const install = async () => {
  try {
    const cache = await caches.open(CACHE);
    const wanted = [...FILES, ...(await tablesInUse())];
    await Promise.all(wanted.map(([name, integrity]) => download(cache, name, integrity)));
  } catch (trouble) {
    await caches.delete(CACHE);
    throw trouble;
  }
};

// This build is complete by now. The one before it stays for pages that still run it; those before that go.
const activate = async () => {
  const older = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(older.slice(0, -1).map((name) => caches.delete(name)));
  await self.clients.claim();
};

// Keeps what comes from the network, beside the files of this build.
const fetchAndKeep = async (request, name) => {
  const file = await fetch(request);
  if (file.ok) {
    const cache = await caches.open(CACHE);
    await cache.put(address(name), file.clone());
  }
  return file;
};

// A name with a fingerprint stands for one content, which may be kept.
const FINGERPRINT = /-[0-9a-f]{16}(_bg)?\.\w+$/;

// From this build; else from the one before, for a page that still runs it; else from the network.
const answer = async (request, name) =>
  (await kept(name, CACHE)) ??
  (await kept(name)) ??
  (FINGERPRINT.test(name) ? fetchAndKeep(request, name) : fetch(request));

// A page of another program: the newest there is, and without a network the one seen last.
const answerNewest = async (request, name) => {
  try {
    return await fetchAndKeep(request, name);
  } catch (trouble) {
    const seen = await kept(name);
    if (seen) return seen;
    throw trouble;
  }
};

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil(activate()));
self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});
self.addEventListener("fetch", (event) => {
  const { method, url } = event.request;
  if (method !== "GET" || !url.startsWith(SCOPE)) return;
  const name = new URL(url).pathname.slice(new URL(SCOPE).pathname.length);
  const page = name === "" || name === "index.html";
  const another = !page && name.endsWith(".html");
  event.respondWith(another ? answerNewest(event.request, name) : answer(event.request, page ? PAGE : name));
});
