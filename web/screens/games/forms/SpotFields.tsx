import { Button } from '@mantine/core'
import type { Game } from '../../../../src/model/documents/types.ts'
import type { Place } from '../../../data/difference.ts'
import { useEdit } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { words } from '../../../words/catalogue.ts'
import { withSpot } from '../field/additions.ts'
import type { PlaceList } from '../field/things.ts'

/** Where the robot's centre stands: the spots of a place with their exact coordinates. */
export function SpotFields(props: { game: Game; list: PlaceList; index: number }) {
  const { game, list, index } = props
  const edit = useEdit()
  const texts = words().games.places
  const { spots } = game[list][index]!
  return (
    <fieldset className="stack">
      <legend>{texts.spots(spots.length)}</legend>
      {spots.map((spot, number) => (
        <div key={spot.id} className="form-grid">
          <Coordinates place={[list, index, 'spots', number, 'at']} name={texts.spot(number + 1)} />
          {!edit.readOnly && spots.length > 1 && (
            <div style={{ alignSelf: 'end' }}>
              <Button
                size="compact-md"
                variant="subtle"
                aria-label={texts.removeSpot(number + 1)}
                onClick={() =>
                  edit.set(
                    [list, index, 'spots'],
                    spots.filter((other) => other !== spot),
                  )
                }
              >
                {words().games.members.short.remove}
              </Button>
            </div>
          )}
        </div>
      ))}
      {!edit.readOnly && (
        <div>
          <Button
            size="compact-md"
            variant="default"
            disabled={spots.length >= 30}
            onClick={() => edit.set([], withSpot(game, list, index).game)}
          >
            {texts.addSpot}
          </Button>
        </div>
      )}
    </fieldset>
  )
}

export function Coordinates(props: { place: Place; name: string }) {
  const texts = words().games.places
  return (
    <>
      <NumberField
        place={[...props.place, 0]}
        label={texts.spotAlong(props.name)}
        quantity="length"
        min={0}
        max={200}
        step={0.05}
      />
      <NumberField
        place={[...props.place, 1]}
        label={texts.spotAcross(props.name)}
        quantity="length"
        min={0}
        max={200}
        step={0.05}
      />
    </>
  )
}
