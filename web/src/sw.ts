// Keeps the page itself, who is served and the last table, so that the workbench opens out of the desk's
// reach. Writes never pass through here: what is noted waits in the page's own queue.
export {};
const here = self as unknown as ServiceWorkerGlobalScope;
const shelf = 'backmark-1';
const frame = ['/', '/assets/ahead.js', '/assets/app.js', '/assets/app.css', '/assets/tiles.js', '/assets/mark.svg'];

here.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(shelf)
      .then((kept) => kept.addAll(frame))
      .then(() => here.skipWaiting()),
  );
});
here.addEventListener('activate', (event) => event.waitUntil(here.clients.claim()));

// The network first; what was kept, when there is none. Nobody waits for the keeping.
async function fresh(event: FetchEvent, key: string): Promise<Response> {
  try {
    const answer = await fetch(event.request);
    if (answer.ok) {
      const copy = answer.clone();
      event.waitUntil(caches.open(shelf).then((kept) => kept.put(key, copy)));
    }
    return answer;
  } catch (fault) {
    const old = await (await caches.open(shelf)).match(key);
    if (old) {
      return old;
    }
    throw fault;
  }
}

here.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== here.location.origin || url.pathname === '/api/changes') {
    return;
  }
  if (url.pathname.startsWith('/assets/') || url.pathname === '/api/hello' || url.pathname === '/api/table') {
    event.respondWith(fresh(event, url.pathname));
  } else if (request.mode === 'navigate' && !url.pathname.startsWith('/prints/')) {
    event.respondWith(fresh(event, '/'));
  }
});
