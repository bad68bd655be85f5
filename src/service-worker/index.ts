import { build, files, prerendered, version } from '$service-worker';
import { checksum } from '$lib/files/checksum.ts';
import { isRequestToWorker } from '$lib/document/persistence/workerRequest.ts';

/**
 * Keeps the whole site, so that it opens and works without a network after the first visit. Every build has a cache of its
 * own, filled before the build is used. A new build waits until the page asks for it or no page is open any more.
 */
declare const self: ServiceWorkerGlobalScope;

const PREFIX = 'wedgewright/';
/** Half the fonts are for browsers that know no service worker either; a page for what is missing is never missing. */
const isKept = (path: string): boolean => !path.endsWith('.woff') && !path.endsWith('/404');
const kept = new Set([...build, ...files, ...prerendered].filter(isKept));
const CACHE = `${PREFIX}${version}-${checksum(new TextEncoder().encode([...kept].join('\n'))).toString(16)}`;

/** How long the network may take for a page that is kept here too, ms. */
const PATIENCE = 4000;

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(takeOver()));

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== self.location.origin) return;
  if (request.mode === 'navigate') {
    const page = pathname.replace(/index\.html$/, '');
    // As the server answers an address without its last slash.
    if (kept.has(`${page}/`)) event.respondWith(Response.redirect(withSlash(request.url)));
    if (!kept.has(page)) return;
    event.respondWith(networkFirst(request, page));
    event.waitUntil(refill());
  } else if (kept.has(pathname) || pathname.includes('/_app/immutable/')) event.respondWith(keptFirst(request));
});

self.addEventListener('message', (event) => {
  if (!isRequestToWorker(event.data)) return;
  if (event.data.kind === 'take-over') void self.skipWaiting();
  else event.ports[0]?.postMessage(event.data.paths.every((path) => kept.has(path)));
});

/** The address of a page with the slash that its path lacks. */
function withSlash(address: string): URL {
  const url = new URL(address);
  url.pathname += '/';
  return url;
}

/** Asks for everything anew: what the browser has kept on its own may belong to an older build. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  const isNamedByContent = (path: string): boolean => path.includes('/_app/immutable/');
  await cache.addAll(
    [...kept].map((path) => new Request(path, { cache: isNamedByContent(path) ? 'default' : 'reload' })),
  );
}

/**
 * Fills the cache again where it, or some of it, is gone: a browser short of room or a visitor may have cleared it. All of
 * it or nothing, or files of two builds could come to lie in one cache; without a network the next page that is opened tries again.
 */
async function refill(): Promise<void> {
  const cache = await caches.open(CACHE);
  if ((await cache.keys()).length < kept.size) await keepAll().catch(() => undefined);
}

/** The build before this one stays, for pages of it that are still open; caches are listed oldest first. */
async function takeOver(): Promise<void> {
  const others = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await Promise.all(others.slice(0, -1).map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** The page as it is on the server; without a network, or when that takes too long, as it is here. */
async function networkFirst(request: Request, page: string): Promise<Response> {
  const here = async (): Promise<Response | undefined> => (await caches.open(CACHE)).match(page);
  if (!self.navigator.onLine) return (await here()) ?? fetch(request);
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(PATIENCE) });
    return answer.ok ? answer : ((await here()) ?? answer);
  } catch (error) {
    const kept = await here();
    if (kept === undefined) throw error;
    return kept;
  }
}

/** A file that does not change as long as its build is kept. */
async function keptFirst(request: Request): Promise<Response> {
  const own = await (await caches.open(CACHE)).match(request);
  return own ?? (await caches.match(request)) ?? fetch(request);
}
