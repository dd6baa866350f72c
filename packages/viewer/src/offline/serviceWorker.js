/**
 * Lets the page open without a network: keeps every file of one build, and answers from that. Another build
 * waits until a person says so, so that nothing changes under their hands. The build writes both constants.
 */
const FILES = '__FILES__';
const BUILD = '__BUILD__';

const NAME = `halfcup-${BUILD}`;
const isOurs = (name) => name.startsWith('halfcup-');
const page = () => new URL('index.html', self.registration.scope).href;

async function store() {
  const cache = await caches.open(NAME);
  // Past the browser's own cache, which may hold the files of an earlier build under the same names.
  await cache.addAll(FILES.map((file) => new Request(new URL(file, self.registration.scope), { cache: 'reload' })));
}

async function tidy() {
  const others = (await caches.keys()).filter((name) => isOurs(name) && name !== NAME);
  // The one before stays for tabs that still show it: they fetch parts of it late.
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
  await self.clients.claim();
}

async function answer(request) {
  const cache = await caches.open(NAME);
  const wanted = request.mode === 'navigate' ? page() : request;
  // A server may say that its answer varies by who asks; that of a build does not.
  const how = { ignoreSearch: true, ignoreVary: true };
  return (await cache.match(wanted, how)) ?? (await caches.match(wanted, how)) ?? fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(store()));
self.addEventListener('activate', (event) => event.waitUntil(tidy()));
self.addEventListener('message', ({ data }) => {
  if (data === 'take over') void self.skipWaiting();
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  // What a person has chosen from elsewhere, a background map, is none of ours.
  if (request.method === 'GET' && request.url.startsWith(self.registration.scope)) event.respondWith(answer(request));
});
