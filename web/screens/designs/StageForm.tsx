import { Button, Checkbox } from '@mantine/core'
import { type ReactNode, useState } from 'react'
import type { Stage } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { DurationFields } from '../../shell/fields/DurationFields.tsx'
import { problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { TextField } from '../../shell/fields/TextField.tsx'
import { words } from '../../words/catalogue.ts'
import { Hardware } from '../timings/Hardware.tsx'
import { exchanged, freshStage, insertedAfter, neighbour, waitingChain, withoutStage } from './network.ts'
import { cutStage } from './split.ts'

/** One stage: its name, its time, what it waits for, and its place among the others. */
export function StageForm(props: {
  trip: Stage[]
  selected: string | null
  place: Place
  onAdded(stage: string): void
  /** What stands beside a stage's time: the times that were taken of it. */
  timed(stage: string, duration: Place): ReactNode
}) {
  const edit = useEdit()
  const texts = words().designs.stage
  const { trip } = props
  const index = trip.findIndex(({ id }) => id === props.selected)
  const stage = trip[index]
  if (!stage) return <p className="soft">{texts.choose}</p>
  const place: Place = [...props.place, 'stages', index]
  const put = (stages: Stage[]) => edit.set([...props.place, 'stages'], stages)
  const cut = () => {
    const taken = trip.map(({ id }) => id)
    const number = [2, 3, 4, 5, 6, 7, 8, 9].find((each) => !taken.includes(`${stage.id}-${each}`)) ?? taken.length + 1
    const second = { id: `${stage.id}-${number}`, name: words().quickSheet.split.second(stage.name) }
    put(cutStage(trip, stage.id, second))
  }
  const insert = () => {
    const fresh = freshStage(trip, texts.fresh)
    put(insertedAfter(trip, stage.id, fresh))
    props.onAdded(fresh.id)
  }
  return (
    <div className="stack" data-testid="stage-form">
      <div className="form-grid">
        <TextField place={[...place, 'name']} label={texts.name} required />
      </div>
      <DurationFields place={[...place, 'duration']} label={texts.time} />
      {props.timed(stage.id, [...place, 'duration'])}
      <Hardware key={`hardware ${stage.id}`} at={place.slice(1)} />
      <Waits key={stage.id} trip={trip} stage={stage} place={place} problemsAt={props.place} />
      <Order trip={trip} stage={stage} onPut={put} />
      <div className="row">
        <Checkbox
          label={texts.each}
          disabled={edit.readOnly}
          checked={stage.each ?? false}
          onChange={(event) => edit.set([...place, 'each'], event.currentTarget.checked ? true : undefined)}
        />
        {!edit.readOnly && (
          <>
            <Button variant="default" size="compact-md" onClick={cut}>
              {words().quickSheet.split.cut}
            </Button>
            <Button variant="default" size="compact-md" onClick={insert}>
              {texts.insert}
            </Button>
          </>
        )}
        {!edit.readOnly && (
          <Button variant="subtle" size="compact-md" onClick={() => put(withoutStage(trip, stage.id))}>
            {texts.remove}
          </Button>
        )}
      </div>
    </div>
  )
}

/** What a stage waits for. What would make a circle is refused, and why is said beside it. */
function Waits(props: { trip: Stage[]; stage: Stage; place: Place; problemsAt: Place }) {
  const { trip, stage, place } = props
  const edit = useEdit()
  const texts = words().designs.stage
  const [refused, setRefused] = useState<string | null>(null)
  const nameOf = (id: string) => trip.find((other) => other.id === id)?.name ?? id
  const waitsFor = (id: string, waits: boolean) => {
    const chain = waits ? waitingChain(trip, stage.id, id) : null
    if (chain) return setRefused(texts.refused(stage.name, nameOf(id), texts.chain(chain.map(nameOf))))
    setRefused(null)
    edit.set([...place, 'after'], waits ? [...stage.after, id] : stage.after.filter((other) => other !== id))
  }
  const problem =
    refused ??
    problemAt(edit.problems, [...place, 'after']) ??
    problemAt(edit.problems, [...props.problemsAt, 'stages'])
  return (
    <fieldset>
      <legend>{texts.waits}</legend>
      <div className="row">
        {[{ id: 'drive', name: texts.drive }, ...trip.filter(({ id }) => id !== stage.id)].map(({ id, name }) => (
          <Checkbox
            key={id}
            label={name}
            disabled={edit.readOnly}
            checked={stage.after.includes(id)}
            onChange={(event) => waitsFor(id, event.currentTarget.checked)}
          />
        ))}
      </div>
      {problem && (
        <p role="alert" className="loss">
          {problem}
        </p>
      )}
    </fieldset>
  )
}

/** Changing places with the stage before or after it in the network. */
function Order(props: { trip: Stage[]; stage: Stage; onPut(stages: Stage[]): void }) {
  const { trip, stage } = props
  const edit = useEdit()
  const texts = words().designs.stage
  if (edit.readOnly || trip.length < 2) return null
  const [before, after] = [around(trip, stage.id, -1), around(trip, stage.id, 1)]
  const swap = (other: Stage) => props.onPut(exchanged(trip, stage.id, other.id))
  return (
    <div className="row" role="group" aria-label={texts.order}>
      {before ? (
        <Button variant="default" size="compact-md" onClick={() => swap(before)}>
          {texts.earlier(before.name)}
        </Button>
      ) : (
        <span className="soft small">{texts.first}</span>
      )}
      {after ? (
        <Button variant="default" size="compact-md" onClick={() => swap(after)}>
          {texts.later(after.name)}
        </Button>
      ) : (
        <span className="soft small">{texts.last}</span>
      )}
    </div>
  )
}

const around = (trip: Stage[], id: string, direction: -1 | 1): Stage | undefined => {
  const other = neighbour(trip, id, direction)
  return trip.find((stage) => stage.id === other)
}
