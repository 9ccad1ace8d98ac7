// Keeps one version of the page whole on this device, so that it works without a network. assets.js is written when the page is
// published: the files with their hashes, and a version over all of them. A new version is fetched beside the old one and takes over
// only when it is complete.
importScripts('assets.js');

const CACHE = `speclint-bench-${self.assets.version}`;
const POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

addEventListener('install', (event) => event.waitUntil((async () => {
  const cache = await caches.open(CACHE);
  await Promise.all(self.assets.files.map(async ({ path, hash }) => {
    const answer = await fetch(new Request(path, { integrity: `sha256-${hash}`, cache: 'no-cache' }));
    if (!answer.ok) throw new Error(path);
    await cache.put(path, answer);
  }));
  await self.skipWaiting();
})()));

addEventListener('activate', (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name.startsWith('speclint-bench-') && name !== CACHE) await caches.delete(name);
  await self.clients.claim();
})()));

addEventListener('fetch', (event) => {
  const address = new URL(event.request.url);
  if (event.request.method !== 'GET' || address.origin !== location.origin) return;
  event.respondWith((async () => {
    const scope = new URL(registration.scope).pathname;
    const path = address.pathname.startsWith(scope) ? address.pathname.slice(scope.length) : address.pathname;
    const kept = await (await caches.open(CACHE)).match(path === '' ? 'index.html' : path);
    if (!kept) return fetch(event.request).catch(() => Response.error());
    const headers = new Headers(kept.headers);
    headers.set('Content-Security-Policy', POLICY);
    headers.set('X-Content-Type-Options', 'nosniff');
    headers.set('Referrer-Policy', 'no-referrer');
    return new Response(kept.body, { status: kept.status, headers });
  })());
});
