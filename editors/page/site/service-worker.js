// Keeps the page in the browser, so that it works without a network. A new version takes
// the place of the old one as a whole.
"use strict";
const built = null; // the version and its files: written when the folder is built

const cacheName = "newmake-" + built.version;

addEventListener("install", (e) => e.waitUntil((async () => {
  const cache = await caches.open(cacheName);
  await cache.addAll(built.files.map((f) => new Request(f, {cache: "reload"})));
  await skipWaiting();
})()));

addEventListener("activate", (e) => e.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith("newmake-") && name !== cacheName) await caches.delete(name);
  await clients.claim();
})()));

addEventListener("fetch", (e) => {
  if (e.request.method !== "GET" || new URL(e.request.url).origin !== location.origin) return;
  e.respondWith((async () => (await (await caches.open(cacheName)).match(e.request, {ignoreSearch: true})) ?? fetch(e.request))());
});
