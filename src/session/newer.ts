/**
 * Makes the page work without a network, and tells when a newer version of it is in place: it serves the next load, the
 * open page goes on as it is.
 */
const HOUR = 3_600_000;

/** Listens at once, and fetches what the page has not asked for yet once `isQuiet` comes. */
export async function workOffline(script: URL, isQuiet: Promise<void>, onNewer: () => void): Promise<void> {
  const { serviceWorker } = navigator as { serviceWorker?: ServiceWorkerContainer };
  if (!serviceWorker) return; // none on an address without encryption
  let isServed = serviceWorker.controller !== null;
  serviceWorker.addEventListener('controllerchange', () => {
    if (isServed) onNewer();
    isServed = true; // the first visit: this very version
  });
  await isQuiet;
  try {
    const registration = await serviceWorker.register(script, { updateViaCache: 'none' });
    const look = () => void registration.update().catch(() => {}); // no network: next time
    setInterval(look, HOUR);
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') look();
    });
  } catch {
    // blocked by the browser's settings: the page needs the network, as before
  }
}
