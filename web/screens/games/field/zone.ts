import type { Game, Point } from '../../../../src/model/documents/types.ts'
import { standing } from '../../../../src/model/field/index.ts'
import { spotIds } from './additions.ts'
import { gridIn, rectangle, spotsAt } from './fill.ts'
import { rounded } from './partner.ts'
import { type PlaceList, placeLists } from './things.ts'

/** A zone that is being filled: not part of the document until it is. */
export interface Zone {
  shape: 'rectangle' | 'polygon'
  outline: Point[]
  /** 'goals/0' */
  place: string
  along: number
  across: number
  instead: boolean
  skip: boolean
}

export const mostSpots = 30

export const placeKeys = (game: Game): { value: string; name: string }[] =>
  placeLists.flatMap((list) => game[list].map(({ name }, index) => ({ value: `${list}/${index}`, name })))

export const placeOf = (zone: Zone): { list: PlaceList; index: number } => {
  const [list, index] = zone.place.split('/')
  return { list: list as PlaceList, index: Number(index) }
}

export function firstZone(game: Game): Zone {
  const { length, width } = game.field
  const size = Math.min(length, width) / 4
  return {
    shape: 'rectangle',
    outline: rectangle(
      [rounded(length / 4), rounded(width / 2 - size / 2)],
      [rounded(length / 4 + size), rounded(width / 2 + size / 2)],
    ),
    place: placeKeys(game)[0]?.value ?? '',
    along: 0.5,
    across: 0.5,
    instead: true,
    skip: true,
  }
}

/** One corner of the zone at another point; a rectangle stays one. */
export function withZoneCorner(zone: Zone, corner: number, to: Point): Zone {
  if (zone.shape === 'polygon')
    return { ...zone, outline: zone.outline.map((point, index) => (index === corner ? to : point)) }
  const opposite = zone.outline[(corner + 2) % 4]!
  const [lowX, lowY] = [corner === 0 || corner === 3, corner < 2]
  // Beyond the opposite corner it takes that one along, so that the corner in hand stays the same one.
  const x = lowX ? Math.max(to[0], opposite[0]) : Math.min(to[0], opposite[0])
  const y = lowY ? Math.max(to[1], opposite[1]) : Math.min(to[1], opposite[1])
  return { ...zone, outline: rectangle(to, [x, y]) }
}

/** The points at which the zone would get spots. */
export function zonePoints(game: Game, zone: Zone, footprint: { length: number; width: number }): Point[] {
  const points = gridIn(zone.outline, zone)
  return zone.skip ? points.filter(standing(game.field, footprint)) : points
}

/** The game with the zone's place filled. */
export function filled(game: Game, zone: Zone, points: readonly Point[]): Game {
  const { list, index } = placeOf(zone)
  const place = game[list][index]!
  const spots = zone.instead
    ? spotsAt(points, { reuse: place.spots, taken: spotIds(game), place: place.id })
    : [...place.spots, ...spotsAt(points, { reuse: [], taken: spotIds(game), place: place.id })]
  return { ...game, [list]: game[list].map((other, at) => (at === index ? { ...other, spots } : other)) }
}
