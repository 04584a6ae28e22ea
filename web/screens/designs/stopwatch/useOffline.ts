import { useEffect, useState } from 'react'

export type Offline = 'preparing' | 'ready' | 'onlyHttps' | 'never'

const first = (): Offline => {
  if (!isSecureContext) return 'onlyHttps'
  // Not where vite serves the sources: there is no build to be kept.
  return import.meta.env.MODE === 'production' && 'serviceWorker' in navigator ? 'preparing' : 'never'
}

/** Has this browser keep the page, so that it opens without a connection; only where a screen asks for it. */
export function useOffline(): Offline {
  const [state, setState] = useState(first)
  useEffect(() => {
    if (first() !== 'preparing') return
    let shown = true
    const say = (next: Offline) => () => {
      if (shown) setState(next)
    }
    navigator.serviceWorker
      .register('/sw.js')
      .then(() => navigator.serviceWorker.ready)
      .then(say('ready'), say('never'))
    return () => {
      shown = false
    }
  }, [])
  return state
}
