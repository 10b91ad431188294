/**
 * Keeps the page itself in the browser, so that it opens while the server is away. What the shop keeps (/api) never
 * passes through here. Browsers run it on this computer and over https only.
 *
 * The build puts in the page's files (vite.config.ts); another list is another worker, with a store of its own.
 */
const files = JSON.parse('__FILES__');
const storeName = 'page-__VERSION__';

self.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(storeName)
      .then((store) => store.addAll(files))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener('activate', (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(names.filter((name) => name !== storeName).map((name) => caches.delete(name))),
      )
      .then(() => self.clients.claim()),
  );
});

self.addEventListener('fetch', (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== 'GET' || origin !== self.location.origin || pathname.startsWith('/api/'))
    return;
  // Names under /assets carry a hash of their content: what is kept is what would come.
  if (pathname.startsWith('/assets/')) event.respondWith(keptOrFetched(event.request));
  else event.respondWith(fetch(event.request).catch(() => kept(event.request)));
});

async function keptOrFetched(request) {
  return (await caches.match(request)) ?? fetch(request);
}

/** Every address of the page's own is the page. */
async function kept(request) {
  const found = await caches.match(request.mode === 'navigate' ? '/' : request);
  return found ?? Response.error();
}
