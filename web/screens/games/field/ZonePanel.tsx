import { Button, Checkbox, NativeSelect } from '@mantine/core'
import { useMemo } from 'react'
import type { Game, Point } from '../../../../src/model/documents/types.ts'
import { withValueAt } from '../../../data/place.ts'
import { type Edit, EditProvider } from '../../../shell/fields/EditContext.tsx'
import { NumberField } from '../../../shell/fields/NumberField.tsx'
import { useTexts } from '../../../shell/fields/useTexts.ts'
import { words } from '../../../words/catalogue.ts'
import { memoWords } from '../../../words/memo.tsx'
import { mostSpots, placeKeys, placeOf, withZoneCorner, type Zone } from './zone.ts'

/** How a zone is filled with spots: its corners, how far apart, and what becomes of the spots that are there. */
export const ZonePanel = memoWords(function ZonePanel(props: {
  game: Game
  zone: Zone | null
  points: readonly Point[]
  said: string | null
  onZone(zone: Zone | null): void
  onBegin(): void
  onFill(): void
}) {
  const { game, zone, points } = props
  const texts = words().field.fill
  if (!zone)
    return (
      <fieldset className="stack">
        <legend>{texts.title}</legend>
        <p className="soft small">{texts.help}</p>
        <div>
          <Button variant="default" disabled={placeKeys(game).length === 0} onClick={props.onBegin}>
            {texts.begin}
          </Button>
        </div>
        {placeKeys(game).length === 0 && <p className="soft small">{texts.noPlace}</p>}
        {props.said && <p role="status">{props.said}</p>}
      </fieldset>
    )
  const { list, index } = placeOf(zone)
  const total = points.length + (zone.instead ? 0 : (game[list][index]?.spots.length ?? 0))
  const wrong = points.length === 0 ? texts.tooFew : total > mostSpots ? texts.tooMany(total, mostSpots) : null
  return (
    <fieldset className="stack">
      <legend>{texts.title}</legend>
      <div className="form-grid">
        <NativeSelect
          label={texts.place}
          value={zone.place}
          data={placeKeys(game).map(({ value, name }) => ({ value, label: name }))}
          onChange={(event) => props.onZone({ ...zone, place: event.currentTarget.value })}
        />
        <NativeSelect
          label={texts.shape}
          value={zone.shape}
          data={(['rectangle', 'polygon'] as const).map((shape) => ({ value: shape, label: texts[shape] }))}
          onChange={(event) => props.onZone(reshaped(zone, event.currentTarget.value as Zone['shape']))}
        />
      </div>
      <ZoneNumbers zone={zone} onZone={props.onZone} />
      <Checkbox
        label={texts.instead}
        checked={zone.instead}
        onChange={(event) => props.onZone({ ...zone, instead: event.currentTarget.checked })}
      />
      <Checkbox
        label={texts.skip}
        checked={zone.skip}
        onChange={(event) => props.onZone({ ...zone, skip: event.currentTarget.checked })}
      />
      <p role="status" className={wrong ? 'loss' : undefined}>
        {wrong ?? texts.count(points.length)}
      </p>
      <div className="row">
        <Button disabled={wrong !== null} onClick={props.onFill}>
          {texts.button}
        </Button>
        <Button variant="default" onClick={() => props.onZone(null)}>
          {texts.stop}
        </Button>
      </div>
    </fieldset>
  )
})

/** A rectangle round a polygon, or a polygon with the rectangle's corners. */
function reshaped(zone: Zone, shape: Zone['shape']): Zone {
  if (shape === 'polygon') return { ...zone, shape }
  const [xs, ys] = [zone.outline.map(([x]) => x), zone.outline.map(([, y]) => y)]
  const [low, high]: [Point, Point] = [
    [Math.min(...xs), Math.min(...ys)],
    [Math.max(...xs), Math.max(...ys)],
  ]
  return { ...zone, shape, outline: [low, [high[0], low[1]], high, [low[0], high[1]]] }
}

function ZoneNumbers(props: { zone: Zone; onZone(zone: Zone): void }) {
  const { zone, onZone } = props
  const { texts: unread, setText } = useTexts()
  const texts = words().field.fill
  const chosen = words().field.chosen
  const edit: Edit = useMemo(
    () => ({
      document: zone,
      set: (place, value) => {
        if (place[0] !== 'outline') return onZone(withValueAt(zone, place, value))
        const corner = place[1] as number
        const to = [...zone.outline[corner]!] as Point
        to[place[2] as 0 | 1] = value as number
        onZone(withZoneCorner(zone, corner, to))
      },
      pause: () => {},
      problems: [],
      texts: unread,
      setText,
      readOnly: false,
    }),
    [zone, onZone, unread, setText],
  )
  const corners = zone.shape === 'rectangle' ? [0, 2] : [...zone.outline.keys()]
  return (
    <EditProvider value={edit}>
      <div className="form-grid">
        <NumberField place={['along']} label={texts.along} quantity="length" min={0.05} max={50} step={0.05} />
        <NumberField place={['across']} label={texts.across} quantity="length" min={0.05} max={50} step={0.05} />
        {corners.map((corner) => [
          <NumberField
            key={`${corner}x`}
            place={['outline', corner, 0]}
            label={chosen.cornerAlong(corner + 1)}
            quantity="length"
            step={0.05}
          />,
          <NumberField
            key={`${corner}y`}
            place={['outline', corner, 1]}
            label={chosen.cornerAcross(corner + 1)}
            quantity="length"
            step={0.05}
          />,
        ])}
      </div>
    </EditProvider>
  )
}
