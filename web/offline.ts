/// <reference lib="webworker" />
/**
 * The page without a network: every file of a version is kept at the first visit, and served from then on. A newer
 * version is fetched beside the one in use and serves the next load of the page; a page that is open goes on with its
 * own files, those it has not asked for yet included, and so the files of earlier versions stay for a while.
 */
export {};

interface Built {
  version: string; // changes with any file
  files: string[]; // paths below the page's own folder
}

declare global {
  interface Window {
    __BUILT_FILES__: Built; // the builder puts it in
  }
}

const worker = self as unknown as ServiceWorkerGlobalScope;
const { version, files } = self.__BUILT_FILES__;
const NAME = 'downcurve-files-';
const OURS = NAME + version;
const EARLIER = 2; // versions kept beside this one
const NAMED_BY_CONTENT = /^assets\//;

const addressOf = (file: string) => new URL(file, worker.registration.scope).href;

worker.addEventListener('install', (event) => {
  event.waitUntil(fill().then(() => worker.skipWaiting()));
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(dropOld().then(() => worker.clients.claim()));
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const isOurs = request.method === 'GET' && request.url.startsWith(worker.registration.scope);
  if (isOurs) event.respondWith(answer(request));
});

/** Keeps every file, or none: a version is whole. */
async function fill(): Promise<void> {
  const cache = await caches.open(OURS);
  try {
    await Promise.all(files.map((file) => keep(cache, file)));
  } catch (error) {
    await caches.delete(OURS);
    throw error;
  }
}

async function keep(cache: Cache, file: string): Promise<void> {
  const address = addressOf(file);
  const isLasting = NAMED_BY_CONTENT.test(file);
  const known = isLasting ? await caches.match(address) : undefined;
  if (known) return cache.put(address, known);
  const response = await fetch(address, { cache: isLasting ? 'default' : 'reload' });
  if (!response.ok) throw new Error(`${file}: ${response.status}`);
  await cache.put(address, response);
}

async function dropOld(): Promise<void> {
  const earlier = (await caches.keys()).filter((name) => name.startsWith(NAME) && name !== OURS);
  await Promise.all(earlier.slice(0, -EARLIER).map((name) => caches.delete(name)));
}

/** This version's file, else an earlier one's, else what the network has. */
async function answer(request: Request): Promise<Response> {
  const address = new URL(request.url);
  const file = address.pathname.endsWith('/') ? new URL('index.html', address).href : address.href;
  const how = { ignoreSearch: true, ignoreVary: true };
  const cache = await caches.open(OURS);
  return (await cache.match(file, how)) ?? (await caches.match(file, how)) ?? fetch(request);
}
