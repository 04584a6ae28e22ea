import { Button } from '@mantine/core'
import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { client, said } from '../../../data/api.ts'
import { useChanges } from '../../../data/documents.ts'
import { Loading, Trouble } from '../../../shell/states.tsx'
import { words } from '../../../words/catalogue.ts'
import { plain, points, signedPoints } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'

type Choice = number | null

const nameOf = (halfLife: Choice): string => {
  const texts = words().trend.halfLife
  return halfLife === null ? texts.all : texts.after(plain(halfLife, 1))
}

/** What speaks for each half-life, and the lead's choice for this event: asked for when it is opened. */
export function HalfLives({ page }: { page: EventPage }) {
  const texts = words().trend.halfLife
  const [open, setOpen] = useState(false)
  return (
    <details className="no-print" onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{texts.open}</summary>
      {open && <Offered page={page} />}
    </details>
  )
}

function Offered({ page }: { page: EventPage }) {
  const texts = words().trend.halfLife
  const { id, body } = page.event
  const now: Choice = body.halfLife ?? null
  const [typed, setTyped] = useState<Choice | undefined>(undefined)
  const choice = typed === undefined ? now : typed
  const keep = useKeep(page)
  const found = useQuery({
    queryKey: ['event', id, 'estimates', 'halfLives'],
    queryFn: () => said(client.estimates.halfLives.query({ event: id })),
  })
  if (found.error && !found.data)
    return <Trouble title={texts.trouble} error={found.error} retry={() => void found.refetch()} />
  if (!found.data) return <Loading what={texts.what} />
  return (
    <div className="stack">
      <p>{texts.intro}</p>
      <div className="scroll" tabIndex={0} role="region" aria-label={texts.title}>
        <table className="tide">
          <thead>
            <tr>
              <th scope="col">{texts.choice}</th>
              <th scope="col" className="figure">
                {texts.score}
              </th>
              <th scope="col" className="figure">
                {texts.gain}
              </th>
            </tr>
          </thead>
          <tbody>
            {found.data.map(({ halfLife, logScore, gain, standardError }) => (
              <tr key={String(halfLife)}>
                <th scope="row">
                  {page.lead ? (
                    <label>
                      <input
                        type="radio"
                        name="half-life"
                        checked={choice === halfLife}
                        onChange={() => setTyped(halfLife)}
                      />{' '}
                      {nameOf(halfLife)}
                    </label>
                  ) : (
                    nameOf(halfLife)
                  )}
                  {now === halfLife && <span className="slot-mark">{texts.now}</span>}
                </th>
                <td className="figure">{points(logScore)}</td>
                <td className="figure">
                  {halfLife === null ? '–' : texts.points(signedPoints(gain), points(standardError))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="soft">{texts.unsure}</p>
      {page.lead ? (
        <div className="row">
          <Button disabled={choice === now} loading={keep.pending} onClick={() => void keep.save(choice)}>
            {texts.take}
          </Button>
          {keep.before !== undefined && choice === now && (
            <span role="status">
              {texts.taken(nameOf(now))}{' '}
              <button
                type="button"
                className="opens"
                onClick={() => {
                  setTyped(undefined)
                  void keep.save(keep.before ?? null)
                }}
              >
                {texts.undo}
              </button>
            </span>
          )}
        </div>
      ) : (
        <p className="soft">{texts.lead}</p>
      )}
      {keep.trouble && (
        <p role="alert" className="loss">
          {keep.trouble}
        </p>
      )}
    </div>
  )
}

/** Saves the choice with the event; `before` is what counted until the last save from here. */
function useKeep(page: EventPage) {
  const { save } = useChanges()
  const queries = useQueryClient()
  const [before, setBefore] = useState<Choice | undefined>(undefined)
  const [trouble, setTrouble] = useState<string | null>(null)
  const keep = async (choice: Choice) => {
    setTrouble(null)
    const { revision: base } = page.event
    const { halfLife, ...body } = page.event.body
    const next = choice === null ? body : { ...body, halfLife: choice }
    try {
      const outcome = await save.mutateAsync({ kind: 'event', id: body.id, name: body.name, body: next, base })
      if ('conflict' in outcome) return setTrouble(words().trend.halfLife.conflict)
      setBefore(halfLife ?? null)
      await queries.invalidateQueries({ queryKey: ['event', body.id, 'estimates'] })
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return { save: keep, pending: save.isPending, before, trouble }
}
