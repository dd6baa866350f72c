/** Makes the page work without a network, and offers a newer version when it is ready. Nothing is changed unasked. */
import type { Store } from '../state/store/store.ts';

function tellReady(store: Store, waiting: ServiceWorker): void {
  const reload = (): void => {
    store.question.value = null;
    navigator.serviceWorker.addEventListener('controllerchange', () => location.reload(), { once: true });
    waiting.postMessage('take over', []);
  };
  store.question.value = {
    text: 'A new version of Halfcup is ready. Reloading keeps your plan.',
    choices: [
      { label: 'Reload', act: reload },
      { label: 'Later', act: () => void (store.question.value = null) },
    ],
  };
}

function watch(store: Store, registration: ServiceWorkerRegistration): void {
  const ready = (worker: ServiceWorker | null): void => {
    // The first version of all has nobody to replace.
    if (worker?.state === 'installed' && navigator.serviceWorker.controller !== null) tellReady(store, worker);
  };
  ready(registration.waiting);
  registration.addEventListener('updatefound', () => {
    const worker = registration.installing;
    worker?.addEventListener('statechange', () => ready(worker));
  });
  document.addEventListener('visibilitychange', () => {
    // Offline the question fails, and is asked again another time.
    if (document.visibilityState === 'visible') registration.update().catch(() => undefined);
  });
}

/** Where the browser has no service workers, or not for this address, the page needs its server at each start. */
export async function workOffline(store: Store): Promise<void> {
  const workers = (navigator as Partial<Navigator>).serviceWorker;
  if (workers === undefined) return;
  try {
    const registration = (await workers.register('./serviceWorker.js', { updateViaCache: 'none' })) as
      | ServiceWorkerRegistration
      | undefined;
    if (registration !== undefined) watch(store, registration);
  } catch {
    // Nothing is lost but the start without a server.
  }
}
