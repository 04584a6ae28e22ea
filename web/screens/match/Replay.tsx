import { NativeSelect } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useMemo, useState } from 'react'
import type { SampleMatches } from '../../../src/model/match/types.ts'
import { Loading } from '../../shell/states.tsx'
import { words } from '../../words/catalogue.ts'
import { askLive } from '../../worker/client.ts'
import { nameOf } from '../../worker/useModel.ts'
import { Player } from './Player.tsx'
import { reelOf } from './replay.ts'
import type { MatchAsk } from './usePlayed.ts'

const which = ['typical', 'best', 'worst'] as const satisfies readonly (keyof SampleMatches)[]

/** A typical, a best and a worst match on the field. Looked for when the matches are played, because one worker does both. */
export function Replay(props: { ask: MatchAsk; ready: boolean }) {
  const { ask, ready } = props
  const text = words().match.replay
  const [chosen, setChosen] = useState<(typeof which)[number]>('typical')
  const { game, level, seed, lineup } = ask
  const question = useMemo(() => ({ game, level, seed, lineup }), [game, level, seed, lineup])
  const found = useQuery({
    queryKey: ['model', 'sampleMatches', question],
    queryKeyHashFn: () => nameOf('sampleMatches', question),
    queryFn: () => askLive('match', 'sampleMatches', question),
    enabled: ready,
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 300_000,
    // Its worker may be ended for a line-up's sake that is stopped.
    retry: (count, error) => error.name === 'AbortError' && count < 3,
    networkMode: 'always',
  })
  const reel = useMemo(
    () => found.data && reelOf(game, lineup, { timeline: found.data.samples[chosen], ways: found.data.ways }),
    [found.data, game, lineup, chosen],
  )
  return (
    <section className="sheet stack" aria-labelledby="match-replay">
      <h2 id="match-replay">{text.title}</h2>
      {found.error ? (
        <p role="alert">{found.error.message}</p>
      ) : !reel ? (
        ready ? (
          <Loading what={text.loading} />
        ) : (
          <p className="soft">{text.waitingForMatches}</p>
        )
      ) : (
        <>
          <NativeSelect
            className="no-print"
            label={text.which}
            maw="24rem"
            value={chosen}
            data={which.map((one) => ({ value: one, label: text[one] }))}
            onChange={(event) => setChosen(event.currentTarget.value as typeof chosen)}
          />
          <Player key={`${chosen}/${found.dataUpdatedAt}`} reel={reel} lineup={lineup} />
        </>
      )}
    </section>
  )
}
