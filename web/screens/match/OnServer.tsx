import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { MatchReport } from '../../../src/model/match/types.ts'
import { JobRefused, jobs, useJob } from '../../data/jobs.ts'
import { words } from '../../words/catalogue.ts'
import { plain } from '../../words/format.ts'
import { SideBySide } from '../tradeoffs/SideBySide.tsx'
import { optionsOf } from './names.ts'
import { precisionSaid } from './said.ts'
import type { MatchAsk } from './usePlayed.ts'
import { cellsOf } from './WhatIf.tsx'

const counts = [20_000, 200_000, 1_000_000]
/** Longest name that a job may have. */
const longest = 200

const keyOf = (game: string) => `match-job/${game}`

/** Which job of this game's match this browser has started last; a forbidden storage costs only its memory. */
function useKeptJob(game: string) {
  const [id, setId] = useState(() => {
    try {
      return localStorage.getItem(keyOf(game))
    } catch {
      return null
    }
  })
  const keep = (next: string | null) => {
    setId(next)
    try {
      if (next === null) localStorage.removeItem(keyOf(game))
      else localStorage.setItem(keyOf(game), next)
    } catch {
      // As above.
    }
  }
  return [id, keep] as const
}

/** Very many matches of the first line-up, played by the server while this page may be closed. */
export function OnServer(props: { ask: MatchAsk; precision: number | null }) {
  const { ask, precision } = props
  const text = words().match.server
  const [id, keep] = useKeptJob(ask.game.id)
  const { job, error, again } = useJob(id)
  const [count, setCount] = useState(counts[1]!)
  const [busy, setBusy] = useState(false)
  const [removing, setRemoving] = useState(false)
  const [trouble, setTrouble] = useState<string | null>(null)
  const lost = error instanceof JobRefused && error.code === 'notFound'
  const underWay = job !== null && job.endedAt === null

  const doing = async (what: () => Promise<void>) => {
    setBusy(true)
    setTrouble(null)
    try {
      await what()
    } catch (failure) {
      const full = failure instanceof JobRefused && failure.code === 'busy'
      setTrouble(full ? text.full : (failure as Error).message)
    }
    setBusy(false)
  }
  const start = () =>
    doing(async () => {
      const { game, level, seed, lineup } = ask
      const names = optionsOf(lineup).map(({ name }) => name)
      const name = text.name(names.slice(0, 3).join('; '), names.slice(3).join('; '))
      const request = {
        game,
        ...(level === null ? {} : { level }),
        ...lineup,
        replicates: count,
        seed,
        ...(precision === null ? {} : { precision }),
      }
      keep((await jobs.start({ kind: 'match', name: name.slice(0, longest), request })).id)
    })
  const remove = () =>
    doing(async () => {
      await jobs.remove(id!)
      setRemoving(false)
      keep(null)
    })

  return (
    <section className="sheet stack" aria-labelledby="match-server">
      <h2 id="match-server">{text.title}</h2>
      <p className="soft small">{text.help}</p>
      {!underWay && (
        <div className="row no-print" style={{ alignItems: 'end' }}>
          <NativeSelect
            label={precision === null ? text.matches : text.mostMatches}
            value={String(count)}
            data={counts.map((each) => ({ value: String(each), label: plain(each) }))}
            onChange={(event) => setCount(Number(event.currentTarget.value))}
          />
          <Button loading={busy} onClick={() => void start()}>
            {text.start}
          </Button>
        </div>
      )}
      {underWay && <progress max={job.total ?? 1} value={job.total ? job.done : undefined} aria-label={text.title} />}
      <div className="row">
        <p role="status">
          {job && text.states[job.state](plain(job.done), plain(job.total ?? 0))}
          {job && job.replaced > 0 && ` ${text.replaced}`}
          {lost && text.lost}
        </p>
        {underWay && (
          <Button
            variant="default"
            loading={busy}
            onClick={() => void doing(async () => void (await jobs.cancel(id!)))}
          >
            {text.cancel}
          </Button>
        )}
      </div>
      {job?.state === 'failed' && job.failure && <p className="loss">{job.failure.message}</p>}
      {job?.state === 'done' && job.result !== undefined && (
        <Result
          name={job.name ?? ''}
          report={job.result as MatchReport}
          precision={(job.request as { precision?: number } | undefined)?.precision ?? null}
        />
      )}
      {job?.state === 'done' && (
        <div className="row no-print" role="group" aria-label={text.remove}>
          {removing && <p>{text.sure}</p>}
          {removing ? (
            <>
              <Button loading={busy} onClick={() => void remove()}>
                {text.yes}
              </Button>
              <Button variant="default" onClick={() => setRemoving(false)}>
                {text.no}
              </Button>
            </>
          ) : (
            <Button variant="default" onClick={() => setRemoving(true)}>
              {text.remove}
            </Button>
          )}
        </div>
      )}
      {error && !lost && (
        <div className="row">
          <p role="alert">{error.message}</p>
          <Button variant="default" onClick={again}>
            {words().shell.again}
          </Button>
        </div>
      )}
      {trouble && <p role="alert">{trouble}</p>}
    </section>
  )
}

function Result(props: { name: string; report: MatchReport; precision: number | null }) {
  const { name, report, precision } = props
  const { server: text, whatIf: columns } = words().match
  return (
    <>
      {precisionSaid(report, precision).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <SideBySide
        caption={text.title}
        first={columns.lineup}
        columns={[columns.win, columns.ours, columns.theirs, columns.lead, columns.ranking]}
        rows={[{ id: 'server', name, cells: cellsOf(report) }]}
      />
    </>
  )
}
