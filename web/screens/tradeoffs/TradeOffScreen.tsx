import { useMemo } from 'react'
import { useStored } from '../../data/documents.ts'
import { Loading, Trouble } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { useRevisionAsked } from '../documents/useEditing.ts'
import { TradeOff } from './TradeOff.tsx'
import { usePartsOf } from './useParts.ts'

/** A comparison: options side by side over the same unknowns. */
export default function TradeOffScreen(props: { id: string }) {
  const revision = useRevisionAsked()
  const stored = useStored('comparison', props.id, revision)
  const record = stored.data?.body ?? null
  const made = usePartsOf(record)
  const newest = usePartsOf(useMemo(() => record && withoutRevisions(record), [record]))
  const error = stored.error ?? made.error
  if (error && !(stored.data && made.data))
    return (
      <Trouble
        title={words().tradeoffs.notLoaded}
        error={error}
        retry={() => {
          void stored.refetch()
          made.refetch()
        }}
      />
    )
  if (!stored.data || !made.data) return <Loading what={words().tradeoffs.loading} />
  return (
    <TradeOff
      key={`${stored.data.id}/${revision ?? 'newest'}`}
      stored={stored.data}
      made={made.data}
      newest={newest.data ?? null}
      old={revision !== undefined}
    />
  )
}

type Record = NonNullable<Parameters<typeof usePartsOf>[0]>

const withoutRevisions = (record: Record): Record => ({
  game: { id: record.game.id },
  options: record.options.map(({ option, design }) => ({ option: { id: option.id }, design: { id: design.id } })),
})
