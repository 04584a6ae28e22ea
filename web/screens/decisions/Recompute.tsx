import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import { useSearch } from 'wouter'
import type { DecisionRecord } from '../../../src/model/documents/records.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { ComputedAgain } from './ComputedAgain.tsx'
import { FieldStandIn, useFieldCopies } from './FieldStandIn.tsx'
import { newestOf, withStandIn } from './newest.ts'

/** The record computed again with the newest revisions of everything that it was made from. */
export function Recompute(props: { decision: DecisionRecord; revision: number }) {
  const { decision } = props
  const { id, snapshot, comparison } = decision
  const texts = words().decisions.again
  const from = new URLSearchParams(useSearch()).get('field')
  const [asked, setAsked] = useState(from !== null)
  const [copy, setCopy] = useState(from)
  const copies = useFieldCopies(decision, asked)
  const standing = copies.data?.find(({ id }) => id === copy)
  const newest = useQuery({
    queryKey: ['newestOf', id, comparison, snapshot.game.id, snapshot.options.map((option) => option.id)],
    queryFn: () => newestOf(decision),
    enabled: asked,
    staleTime: 0,
    gcTime: 0,
  })
  const now = useMemo(() => newest.data && withStandIn(newest.data, standing), [newest.data, standing])
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
      {asked && <FieldStandIn decision={decision} copies={copies} chosen={standing} onChoose={setCopy} />}
      {now && (copy === null || copies.data) && (
        <ComputedAgain key={standing?.id ?? ''} decision={decision} newest={now} revision={props.revision} />
      )}
    </section>
  )
}
