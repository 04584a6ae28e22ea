import Dexie from 'dexie'
import { useEffect, useState } from 'react'
import { useWords } from '../words/catalogue.ts'

const names = new Set<unknown>(Object.values(Dexie.errnames))

/** Says it wherever the phone's database refuses what a button asked of it, and the screen itself has no place for that. */
export function Unkept() {
  const { app } = useWords()
  const [shown, setShown] = useState(false)
  useEffect(() => {
    const look = ({ reason }: PromiseRejectionEvent) => {
      if (names.has((reason as { name?: unknown } | null)?.name)) setShown(true)
    }
    addEventListener('unhandledrejection', look)
    return () => removeEventListener('unhandledrejection', look)
  }, [])
  if (!shown) return null
  return (
    <div className="unkept">
      <p role="alert">{app.unkept}</p>
      <button type="button" onClick={() => setShown(false)}>
        {app.close}
      </button>
    </div>
  )
}
