// Keeps the field pages on the phone. SHELL (addresses) and VERSION are put before this text by the service: a new
// version of the service has another text, and the browser takes it as soon as it meets it.
const NAME = `underice-field-${VERSION}`;

self.addEventListener('install', (event) => {
  const keep = async () => {
    const cache = await caches.open(NAME);
    await Promise.all(
      SHELL.map(async (address) => {
        const answer = await fetch(address, { cache: 'reload', credentials: 'same-origin' });
        if (answer.ok && !answer.redirected) await cache.put(address, answer);
        else throw new Error(`${address}: ${answer.status}`);
      }),
    );
    await self.skipWaiting();
  };
  event.waitUntil(keep());
});

self.addEventListener('activate', (event) => {
  const leaveOld = async () => {
    for (const name of await caches.keys())
      if (name.startsWith('underice-field-') && name !== NAME) await caches.delete(name);
    await self.clients.claim();
  };
  event.waitUntil(leaveOld());
});

self.addEventListener('fetch', (event) => {
  const { pathname, search, origin } = new URL(event.request.url);
  if (event.request.method !== 'GET' || origin !== self.location.origin) return;
  const address = pathname === '/field' ? pathname : `${pathname}${search}`;
  if (!SHELL.includes(address)) return;
  const kept = async () => {
    const cache = await caches.open(NAME);
    return (await cache.match(address)) ?? fetch(event.request);
  };
  event.respondWith(kept());
});
