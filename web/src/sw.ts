// Keeps the page itself and the last good answers, so that the workbench opens out of the desk's
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

// The network first; what was kept, when there is none.
async function fresh(request: Request, key: string): Promise<Response> {
  const kept = await caches.open(shelf);
  try {
    const answer = await fetch(request);
    if (answer.ok) {
      await kept.put(key, answer.clone());
    }
    return answer;
  } catch (fault) {
    const old = await kept.match(key);
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
  if (url.pathname.startsWith('/assets/') || url.pathname === '/api/hello') {
    event.respondWith(fresh(request, url.pathname));
  } else if (request.mode === 'navigate' && !url.pathname.startsWith('/prints/')) {
    event.respondWith(fresh(request, '/'));
  }
});
