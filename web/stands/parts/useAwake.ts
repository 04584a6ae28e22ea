import { useEffect } from 'react'

/** Keeps the screen from going dark, only while it is needed: batteries have to last nine hours. */
export function useAwake(needed: boolean): void {
  useEffect(() => {
    if (!needed || !('wakeLock' in navigator)) return
    let lock: WakeLockSentinel | null = null
    let here = true
    const hold = async () => {
      if (document.visibilityState !== 'visible') return
      try {
        const held = await navigator.wakeLock.request('screen')
        if (here) lock = held
        else void held.release()
      } catch {
        // A phone that saves its battery refuses; recording goes on.
      }
    }
    void hold()
    // The system lets go of it whenever the page is out of sight.
    document.addEventListener('visibilitychange', hold)
    return () => {
      here = false
      document.removeEventListener('visibilitychange', hold)
      void lock?.release()
    }
  }, [needed])
}
