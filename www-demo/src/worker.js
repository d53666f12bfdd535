// Keeps the hosted page for offline: the kept copy first, a newer one when there is a network.
const VERSION = "VERSION";
// Other folders of the same host may keep pages of theirs: each folder has its own copies and touches no other's.
const OWN = `bismar ${new URL(self.registration.scope).pathname} `;
const KEPT = OWN + VERSION;
const FILES = ["./", "manifest.webmanifest", "icon.svg"];

// Whatever the caches between here and the host say: a version is fetched whole from the host itself.
const fresh = (file) => new Request(file, { cache: "reload" });

self.addEventListener("install", (event) => {
  event.waitUntil(caches.open(KEPT).then((cache) => cache.addAll(FILES.map(fresh))).then(() => self.skipWaiting()));
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith(OWN) && name !== KEPT).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== "GET" || origin !== self.location.origin) return;
  const scope = new URL(self.registration.scope).pathname;
  const asked = pathname === `${scope}index.html` ? "./" : event.request;
  const kept = caches.open(KEPT).then((cache) => cache.match(asked, { ignoreSearch: true }));
  event.respondWith(kept.then((found) => found ?? fetch(event.request)));
});
