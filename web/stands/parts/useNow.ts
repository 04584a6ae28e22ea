import { useEffect, useState } from 'react'
import { steadyNow } from '../record/steady.ts'

/** The time by which a match is timed (ms since 1970), drawn anew so often while something runs by it. */
export function useNow(every: number, runs: boolean): number {
  const [now, setNow] = useState(steadyNow)
  useEffect(() => {
    if (!runs) return
    const tick = () => setNow(steadyNow())
    tick()
    const timer = setInterval(tick, every)
    return () => clearInterval(timer)
  }, [every, runs])
  return now
}
