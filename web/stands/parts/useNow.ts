import { useEffect, useState } from 'react'

/** The time (ms since 1970), drawn anew so often while something runs by it. */
export function useNow(every: number, runs: boolean): number {
  const [now, setNow] = useState(Date.now)
  useEffect(() => {
    if (!runs) return
    const tick = () => setNow(Date.now())
    tick()
    const timer = setInterval(tick, every)
    return () => clearInterval(timer)
  }, [every, runs])
  return now
}
