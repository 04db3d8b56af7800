// Keeps the page's files and answers from them, so that the program starts
// without a network. VERSION and FILES are written when the page is put
// together; a new version is fetched whole in the background and takes over at
// the next start, never under a recording.
"use strict";
const VERSION = "@VERSION@";
const FILES = ["@FILES@"];

addEventListener("install", (e) => e.waitUntil((async () => {
  // Where the browser can (W3C, Service Workers, static routing), it answers from
  // the kept files without waking this worker first.
  if (e.addRoutes) await e.addRoutes({ condition: { urlPattern: new URLPattern({ pathname: "/*", search: "" }), requestMethod: "GET" }, source: { cacheName: VERSION } });
  const kept = await caches.open(VERSION);
  await kept.addAll(FILES.map((f) => new Request(f, { cache: "no-cache" })));
})()));

addEventListener("activate", (e) => e.waitUntil((async () => {
  for (const name of await caches.keys()) if (name !== VERSION) await caches.delete(name);
  await clients.claim();
})()));

addEventListener("fetch", (e) => {
  if (e.request.method !== "GET") return;
  e.respondWith((async () => {
    const kept = await caches.open(VERSION);
    return (await kept.match(e.request, { ignoreSearch: true, ignoreVary: true })) || fetch(e.request);
  })());
});
