import { useState } from 'react'

const key = 'cyclewright/queueing'
/** Common practice: events call teams some ten to twenty minutes before their match. */
const usual = 15

const isMinutes = (value: unknown): value is number =>
  Number.isInteger(value) && (value as number) >= 0 && (value as number) <= 90

function stored(): number {
  try {
    const kept = Number(localStorage.getItem(key) ?? Number.NaN)
    return isMinutes(kept) ? kept : usual
  } catch {
    return usual
  }
}

/** How long before a match this team queues. What is typed wrongly stays in its field and counts for nothing. */
export function useQueueing() {
  const [minutes, setMinutes] = useState(stored)
  const [typed, setTyped] = useState<string | number>(minutes)
  return {
    minutes,
    typed,
    wrong: !isMinutes(typed === '' ? null : Number(typed)),
    type: (next: string | number) => {
      setTyped(next)
      const value = next === '' ? null : Number(next)
      if (!isMinutes(value)) return
      setMinutes(value)
      try {
        localStorage.setItem(key, String(value))
      } catch {
        // It holds for as long as the page is open.
      }
    },
  }
}
