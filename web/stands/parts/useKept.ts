import { useSyncExternalStore } from 'react'

/** Whether the browser keeps the page itself, so that it opens without a connection. */
export type PageKept = 'preparing' | 'ready' | 'onlyHttps' | 'never'

let state: PageKept = 'preparing'
const listeners = new Set<() => void>()

function become(next: PageKept): void {
  state = next
  for (const listener of listeners) listener()
}

/** Has the browser keep the page. Its worker touches files of the page only: an update takes nothing from the outbox. */
export async function keepPage(): Promise<void> {
  if (!isSecureContext) return become('onlyHttps')
  // Not where vite serves the sources: there is no build to be kept.
  if (import.meta.env.MODE !== 'production' || !('serviceWorker' in navigator)) return become('never')
  try {
    const registration = await navigator.serviceWorker.register('/stands-sw.js', { scope: '/stands' })
    const worker = registration.active ?? registration.waiting ?? registration.installing
    if (!worker) return become('never')
    const look = () => {
      if (worker.state === 'activated') become('ready')
    }
    worker.addEventListener('statechange', look)
    look()
  } catch {
    become('never')
  }
}

const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

export const useKept = (): PageKept => useSyncExternalStore(subscribe, () => state)
