import { NativeSelect } from '@mantine/core'
import type { Game, ScoreEntry } from '../../../src/model/documents/types.ts'
import type { Place } from '../../data/difference.ts'
import { useEdit } from '../../shell/fields/EditContext.tsx'
import { spotName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'
import { Choices } from '../games/forms/Choices.tsx'

/** From which spots of a goal a way to score is played: any, or those chosen. */
export function EntrySpots(props: { game: Game; goal: string; entry: ScoreEntry; place: Place }) {
  const { game, entry, place } = props
  const edit = useEdit()
  const texts = words().designs.leg
  const goal = game.goals.find(({ id }) => id === props.goal)
  if (!goal || (goal.spots.length < 2 && entry.spots === 'any')) return null
  const spots = goal.spots.map(({ id }) => ({ id, name: spotName(game, id) }))
  return (
    <div className="stack entry-spots">
      <div className="form-grid">
        <NativeSelect
          label={texts.spots}
          disabled={edit.readOnly}
          value={entry.spots === 'any' ? 'any' : 'some'}
          data={[
            { value: 'any', label: texts.anySpot },
            { value: 'some', label: texts.someSpots },
          ]}
          onChange={(event) =>
            edit.set([...place, 'spots'], event.currentTarget.value === 'any' ? 'any' : spots.map(({ id }) => id))
          }
        />
      </div>
      {entry.spots !== 'any' && <Choices place={[...place, 'spots']} label={texts.someSpots} of={spots} />}
    </div>
  )
}
