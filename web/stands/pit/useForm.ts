import { useCallback, useEffect, useState } from 'react'
import { useStanding } from '../parts/means.tsx'

/**
 * What is in a form and not kept as a record yet, on the phone's disk like a match's taps: a phone that is put away, or a browser
 * that is killed, loses nothing. Null until the disk has answered. `fresh` given back clears it away; it must stay the same object.
 */
export function useForm<T>(key: string, fresh: T): readonly [T, (next: T) => void] | null {
  const { database } = useStanding()
  const name = `form/${key}`
  const [read, setRead] = useState<{ name: string; value: T } | null>(null)
  useEffect(() => {
    let here = true
    const show = (value: T) => here && setRead({ name, value })
    database.memory.get(name).then(
      (found) => show(found ? (found.value as T) : fresh),
      () => show(fresh),
    )
    return () => {
      here = false
    }
  }, [database, name, fresh])
  const change = useCallback(
    (next: T) => {
      setRead({ name, value: next })
      const { memory } = database
      const kept: PromiseLike<unknown> = next === fresh ? memory.delete(name) : memory.put({ key: name, value: next })
      // Where the disk takes nothing it stays on the screen.
      kept.then(undefined, () => {})
    },
    [database, name, fresh],
  )
  return read?.name === name ? [read.value, change] : null
}
