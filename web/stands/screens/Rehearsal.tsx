import { useState } from 'react'
import type { Kept } from '../data/database.ts'
import { type Drill, isReached } from '../data/drill.ts'
import type { Me } from '../data/session.ts'
import { useLive } from '../parts/live.ts'
import { useStanding } from '../parts/means.tsx'
import { keepRow } from '../pit/keep.ts'
import { useWords } from '../words/catalogue.ts'

/** While a lead's rehearsal runs: a record made without a network, which has to reach the server afterwards. */
export function Rehearsal({ event, me, rows }: { event: string; me: Me; rows: readonly Kept[] }) {
  const texts = useWords().rehearsal
  const { database, sender } = useStanding()
  const drill = useLive(() => database.memory.get('drill'))?.value as Drill | null | undefined
  const [reached, setReached] = useState(false)
  const [busy, setBusy] = useState(false)
  if (!drill || drill.event !== event) return null
  const made = rows.find(({ row }) => row.kind === 'drill' && row.body.drill === drill.id)
  const make = async () => {
    setBusy(true)
    try {
      const is = await isReached(fetch, Date.now())
      setReached(is)
      if (is) return
      await keepRow(database, { kind: 'drill', body: { drill: drill.id }, event, scout: me.id })
      sender.wake()
    } finally {
      setBusy(false)
    }
  }
  return (
    <section className="card" aria-labelledby="rehearsal">
      <h2 id="rehearsal">{texts.title}</h2>
      {made ? (
        <p role="status">{made.state === 'phone' ? texts.kept : texts.passed}</p>
      ) : (
        <>
          <p>{texts.how}</p>
          {reached && (
            <p role="alert" className="wrong">
              {texts.reached}
            </p>
          )}
          <button type="button" className="tall" disabled={busy} onClick={() => void make()}>
            {texts.make}
          </button>
        </>
      )}
    </section>
  )
}
