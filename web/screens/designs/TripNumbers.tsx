import { Button } from '@mantine/core'
import type { CollectTrip, Game } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { DurationFields } from '../../shell/fields/DurationFields.tsx'
import { problemAt, useEdit } from '../../shell/fields/EditContext.tsx'
import { SelectField } from '../../shell/fields/SelectField.tsx'
import { placeName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'

/** What a failed try of collecting costs, or that it is not repeated, which only tries that never fail may say. */
export function Retry(props: { place: Place; trip: CollectTrip }) {
  const { trip } = props
  const edit = useEdit()
  const texts = words().designs.leg
  const place = [...props.place, 'retry']
  if (trip.retry)
    return (
      <div className="stack">
        <DurationFields place={place} label={texts.retry} />
        {!edit.readOnly && trip.success >= 1 && (
          <div>
            <Button variant="subtle" size="compact-md" onClick={() => edit.set(place, null)}>
              {texts.noRetry}
            </Button>
          </div>
        )}
      </div>
    )
  const problem = problemAt(edit.problems, place)
  return (
    <div className="stack">
      {!edit.readOnly && (
        <div>
          <Button
            variant="default"
            size="compact-md"
            onClick={() => edit.set(place, { kind: 'range', low: 0.5, likely: 1, high: 2 })}
          >
            {texts.addRetry}
          </Button>
        </div>
      )}
      {problem && <p className="loss small">{problem}</p>}
    </div>
  )
}

/** The lesser finish that a failure still earns. */
export function FailsTo(props: { game: Game; finish: string; place: Place }) {
  const { game, finish } = props
  const texts = words().designs.leg
  return (
    <SelectField
      place={[...props.place, 'otherwise']}
      label={texts.fails}
      choices={[
        { value: null, label: texts.nothing },
        ...game.finishes
          .filter(({ id }) => id !== finish)
          .map(({ id }) => ({ value: id, label: texts.still(placeName(game, id)) })),
      ]}
    />
  )
}
