import type { Place } from '../../../data/difference.ts'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { words } from '../../../words/catalogue.ts'

/** Where a point of a path lies: behind its time. */
export function Coordinates(props: { place: Place; name: string }) {
  const texts = words().games.places
  const rules = { quantity: 'length', min: 0, max: 200, step: 0.05 } as const
  return (
    <>
      <NumberField place={[...props.place, 1]} label={texts.spotAlong(props.name)} {...rules} />
      <NumberField place={[...props.place, 2]} label={texts.spotAcross(props.name)} {...rules} />
    </>
  )
}
