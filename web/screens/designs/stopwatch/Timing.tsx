import { useEffect, useMemo, useState } from 'react'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Stored } from '../../../data/documents.ts'
import { words } from '../../../words/catalogue.ts'
import { decimal } from '../../../words/decimal.ts'
import { ByHand } from './ByHand.tsx'
import { DriveCompared } from './DriveCompared.tsx'
import { KeptLine } from './KeptLine.tsx'
import { readRunning, writeRunning } from './keep.ts'
import type { Timed } from './parts.ts'
import { TrialList } from './TrialList.tsx'
import { UseTimes } from './UseTimes.tsx'
import { useTimes } from './useTimes.ts'
import { WatchFace } from './WatchFace.tsx'
import { struck, type Tap, tapped, tookBack, type Watch } from './watch.ts'

/** The watch, the times taken, and what becomes of them. */
export function Timing(props: { id: string; timed: Timed; stored: Stored<'design'>; game: Game }) {
  const { id, timed, stored } = props
  const record = useMemo(
    () => ({
      id,
      name: `${stored.name}: ${timed.legName}, ${timed.name}`.slice(0, 200),
      design: stored.id,
      leg: timed.leg,
      part: timed.part,
    }),
    [id, stored.id, stored.name, timed],
  )
  const times = useTimes(record)
  const [watch, setWatch] = useState<Omit<Watch, 'trials'>>(() => {
    const startedAt = readRunning(id, performance.timeOrigin + performance.now())
    return { startedAt, past: startedAt === null ? [] : [{ tap: 'start', startedAt: null, trial: null }] }
  })
  const { startedAt } = watch
  useEffect(() => writeRunning(id, startedAt), [id, startedAt])
  const [last, setLast] = useState<string | null>(null)
  const texts = words().stopwatch

  const tap = (what: Tap, at: number) => {
    const { trials, ...hands } = tapped({ ...watch, trials: [] }, what, at, crypto.randomUUID())
    setWatch(hands)
    const [ended] = trials
    if (!ended) return
    times.change((all) => [...all, ended])
    setLast(texts.ended(times.trials.length + 1, texts.time(decimal(ended.seconds, 2))))
  }
  const undo = () => {
    const gone = watch.past.at(-1)?.trial ?? null
    const { trials: _, ...hands } = tookBack({ ...watch, trials: [] })
    setWatch(hands)
    setLast(null)
    if (gone !== null) times.change((all) => all.filter(({ id: each }) => each !== gone))
  }
  return (
    <>
      <WatchFace startedAt={startedAt} last={last} undone={watch.past.at(-1)?.tap ?? null} onTap={tap} onUndo={undo} />
      <p className="soft small">{texts.help}</p>
      <KeptLine {...times} />
      <TrialList
        trials={times.trials}
        onStrike={(trial, reason) => times.change((all) => struck(all, trial, reason))}
      />
      <ByHand onAdd={(trial) => times.change((all) => [...all, trial])} />
      {timed.place === null ? (
        timed.part.kind === 'drive' && (
          <DriveCompared
            design={stored.id}
            game={props.game}
            robot={stored.body.robot}
            ends={timed.part}
            trials={times.trials}
          />
        )
      ) : (
        <UseTimes {...props} place={timed.place} trials={times.trials} />
      )}
    </>
  )
}
