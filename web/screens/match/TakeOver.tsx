import { Button, NativeSelect } from '@mantine/core'
import { useState } from 'react'
import type { Goal } from '../../../src/model/documents/types.ts'
import type { Estimated } from '../../../src/model/match/types.ts'
import { type Bodies, useChanges } from '../../data/documents.ts'
import { words } from '../../words/catalogue.ts'
import { seconds } from '../../words/format.ts'
import type { Ways } from './MatchDesk.tsx'

type Way = Ways[number]

/** The way to play with another number of seconds for a piece on the goal; `undefined` takes the number away. */
export function withHoldSeconds(body: Bodies['option'], goal: string, value: number | undefined): Bodies['option'] {
  const { [goal]: _, ...others } = body.option.holdSeconds
  return {
    ...body,
    option: { ...body.option, holdSeconds: value === undefined ? others : { ...others, [goal]: value } },
  }
}

interface Changed {
  way: Way
  revision: number
  before: number | undefined
  after: number
}

/** Writes what a piece was found to buy into a way to play: after a yes, and with a way back. */
export function TakeOver(props: { goal: Goal; perPiece: { average: Estimated; marginal: Estimated }; ways: Ways }) {
  const { goal, perPiece, ways } = props
  const text = words().match.held
  const { save } = useChanges()
  const [chosen, setChosen] = useState<string | null>(null)
  const [kind, setKind] = useState<'marginal' | 'average'>('marginal')
  const [asked, setAsked] = useState<number | null>(null)
  const [changed, setChanged] = useState<Changed | null>(null)
  const [note, setNote] = useState<string | null>(null)
  const [trouble, setTrouble] = useState<string | null>(null)
  const way = ways.find(({ id }) => id === chosen) ?? ways[0]!
  const now = way.body.option.holdSeconds[goal.id]
  const found = Math.round(perPiece[kind].value * 10) / 10
  const said = (value: number | undefined) => (value === undefined ? text.unset : seconds(value))

  const write = async (of: Way, base: number, value: number | undefined): Promise<number | null> => {
    setTrouble(null)
    setNote(null)
    const body = withHoldSeconds(of.body, goal.id, value)
    try {
      const outcome = await save.mutateAsync({ kind: 'option', id: of.id, name: of.name, body, base })
      if ('saved' in outcome) return outcome.saved.revision
      setTrouble(text.conflict)
    } catch (error) {
      setTrouble((error as Error).message)
    }
    return null
  }
  const take = async () => {
    const after = asked!
    setAsked(null)
    const revision = await write(way, way.revision, after)
    if (revision !== null) setChanged({ way, revision, before: now, after })
  }
  const takeBack = async ({ way: of, revision, before }: Changed) => {
    if ((await write(of, revision, before)) === null) return
    setChanged(null)
    setNote(text.undone(of.name, said(before)))
  }

  return (
    <div className="stack no-print">
      <div className="row" style={{ alignItems: 'end' }}>
        <NativeSelect
          label={text.way}
          maw="100%"
          value={way.id}
          data={ways.map(({ id, name }) => ({ value: id, label: name }))}
          onChange={(event) => {
            setChosen(event.currentTarget.value)
            setAsked(null)
          }}
        />
        <NativeSelect
          label={text.number}
          value={kind}
          data={(['marginal', 'average'] as const).map((one) => ({
            value: one,
            label: `${text[one]}: ${seconds(perPiece[one].value)}`,
          }))}
          onChange={(event) => {
            setKind(event.currentTarget.value as typeof kind)
            setAsked(null)
          }}
        />
        <Button variant="default" disabled={found === now} loading={save.isPending} onClick={() => setAsked(found)}>
          {text.take}
        </Button>
      </div>
      {found === now && !changed && <p className="soft small">{text.already(way.name)}</p>}
      {perPiece[kind].standardError > 0.2 * Math.max(0.5, perPiece[kind].value) && (
        <p className="soft small">{text.uncertain}</p>
      )}
      {asked !== null && (
        <div className="row" role="group" aria-label={text.take}>
          <p>{text.confirm(way.name, goal.name, said(now), seconds(asked))}</p>
          <Button onClick={() => void take()}>{text.yes}</Button>
          <Button variant="default" onClick={() => setAsked(null)}>
            {text.no}
          </Button>
        </div>
      )}
      <div role="status" className="row">
        {changed && (
          <>
            <p>{text.changed(changed.way.name, said(changed.before), seconds(changed.after), changed.revision)}</p>
            <Button size="compact-md" variant="default" onClick={() => void takeBack(changed)}>
              {text.undo}
            </Button>
          </>
        )}
        {note && <p>{note}</p>}
      </div>
      {trouble && (
        <p role="alert" className="loss">
          {trouble}
        </p>
      )}
    </div>
  )
}
