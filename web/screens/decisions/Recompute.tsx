import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { ComputedAgain } from './ComputedAgain.tsx'
import { newestOf } from './newest.ts'

/** The record computed again with the newest revisions of everything that it was made from. */
export function Recompute(props: { decision: DecisionRecord; revision: number }) {
  const { decision } = props
  const { id, snapshot, comparison } = decision
  const texts = words().decisions.again
  const [asked, setAsked] = useState(false)
  const newest = useQuery({
    queryKey: ['newestOf', id, comparison, snapshot.game.id, snapshot.options.map((option) => option.id)],
    queryFn: () => newestOf(decision),
    enabled: asked,
    staleTime: 0,
    gcTime: 0,
  })
  return (
    <section className="stack no-print" aria-labelledby="recompute-title">
      <h2 id="recompute-title">{texts.title}</h2>
      <p>{texts.intro}</p>
      {(snapshot.objective ?? 'points') !== 'points' && <p>{words().objective.record.again}</p>}
      {!asked && (
        <div>
          <Button variant="default" onClick={() => setAsked(true)}>
            {texts.button}
          </Button>
        </div>
      )}
      {asked && newest.isPending && <Loading what={texts.loading} />}
      {newest.error && <Trouble title={texts.notLoaded} error={newest.error} retry={() => void newest.refetch()} />}
      {newest.data && <ComputedAgain decision={decision} newest={newest.data} revision={props.revision} />}
    </section>
  )
}
