import { Workbox } from 'workbox-window';

/** Set when a newer page waits; calling it loads that page. */
export const update: { take: (() => void) | null } = $state({ take: null });

/** Registers the worker that keeps the page for offline use; a newer one waits for a tap. */
export function watchForUpdates(): void {
  if (!('serviceWorker' in navigator)) return;
  const workbox = new Workbox('/sw.js');
  workbox.addEventListener('waiting', () => {
    update.take = () => {
      workbox.addEventListener('controlling', () => {
        location.reload();
      });
      workbox.messageSkipWaiting();
    };
  });
  // Without it the page still works while the server answers; only offline use is missing.
  workbox.register().catch(() => undefined);
}
