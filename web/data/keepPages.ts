/**
 * Has this browser keep the pages of events, so that they open without a connection (web/offline/serviceWorker.js). It keeps the
 * pages alone; what they show is kept by themselves.
 */
export function keepPages(): void {
  // Not where vite serves the sources, and not over plain http from elsewhere: there browsers keep nothing.
  if (import.meta.env.MODE !== 'production' || !isSecureContext || !('serviceWorker' in navigator)) return
  navigator.serviceWorker.register('/event-sw.js', { scope: '/event/' }).catch(() => {
    // Without it the pages need the server, as before.
  })
}
