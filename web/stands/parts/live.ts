import { liveQuery } from 'dexie'
import { useEffect, useState } from 'react'

/** What a question to the phone's database answers, now and after every change, in whichever tab; undefined until it is there. */
export function useLive<T>(question: () => Promise<T>, key = ''): T | undefined {
  const [found, setFound] = useState<{ key: string; value: T }>()
  // biome-ignore lint/correctness/useExhaustiveDependencies: the question is told apart by its key
  useEffect(() => {
    const asked = liveQuery(question).subscribe({
      next: (value) => setFound({ key, value }),
      error: (error) => console.error(error),
    })
    return () => asked.unsubscribe()
  }, [key])
  return found?.key === key ? found.value : undefined
}
