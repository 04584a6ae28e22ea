import type { ReactNode } from 'react'
import type { Me } from '../data/session.ts'
import type { Pack } from '../data/shapes.ts'
import { useKnown } from '../parts/means.tsx'
import { Screen } from '../parts/Screen.tsx'
import { useMoreWords } from '../words/more.ts'

/** A screen that needs an event and somebody who records. */
export function InEvent(props: { title: string; children: (of: { pack: Pack; me: Me }) => ReactNode }) {
  const { pit } = useMoreWords()
  const known = useKnown()
  const inside = () => {
    if (!known) return null
    if (!known.pack) return <p className="notice">{pit.noEvent}</p>
    return known.me ? props.children({ pack: known.pack.pack, me: known.me }) : <p className="notice">{pit.nobody}</p>
  }
  return <Screen title={props.title}>{inside()}</Screen>
}

/** What is said when something was kept, and the way to the next one. */
export function Kept(props: { again(): void }) {
  const { pit } = useMoreWords()
  return (
    <>
      <p role="status" className="notice plain">
        {pit.kept}
      </p>
      <button type="button" className="tall" onClick={props.again}>
        {pit.another}
      </button>
    </>
  )
}
