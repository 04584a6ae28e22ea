import type { Auto, Game, Option, Point, Robot } from '../documents/types.ts'
import { placeOf } from '../field/places.ts'
import { firstMeeting, type Motion } from './meeting.ts'

/** Positions in the alliance, from 0, rising. */
type Partners = readonly number[]

/** How near two robots come (m), and the sum of their radii, below which they touch however they are turned. */
interface Nearness {
  distance: number
  touching: number
}

/** Partners that get in each other's way in autonomous. */
export type Clash =
  /** They begin where there is room for one. */
  | ({ kind: 'start'; partners: Partners } & Nearness)
  /** Their routines take more pieces of a source than lie there at the match's start. */
  | { kind: 'pieces'; partners: Partners; source: string; wanted: number; stock: number }
  /** They are at one place at one time: from when on (s since the match's start), and how near they come until the end. */
  | ({ kind: 'path'; partners: Partners; at: number } & Nearness)
  /** Their routines end where there is room for one. */
  | ({ kind: 'end'; partners: Partners } & Nearness)

/** What is less than this apart (m) is rounding. */
const rounding = 1e-9

/**
 * Where partners clash in autonomous. The match itself knows no traffic, so these are warnings and cost no points.
 *
 * A robot is taken as the circle inside its footprint (half its smaller side, as for routes, without the field's
 * clearance): circles that meet are robots that touch, however they are turned; corners may touch earlier. A robot without
 * a routine stands at its start; a routine without a path is not followed, only its start, pieces and end are looked at.
 *
 * @param partners the options of one alliance, which share its coordinates
 */
export function clashesOf(game: Game, partners: readonly Option[]): Clash[] {
  const routines = partners.map(routineOf)
  const pairs = partners.flatMap((_, i) => partners.slice(i + 1).map((_, k): [number, number] => [i, i + 1 + k]))
  return [
    ...pairs.flatMap(([i, j]) => pairClashes(game, [partners[i]!, partners[j]!], [i, j])),
    ...piecesClashes(game, routines),
  ]
}

const routineOf = ({ robot, auto }: Option): Auto | null => robot.autos.find(({ id }) => id === auto) ?? null

const radiusOf = ({ footprint }: Robot): number => Math.min(footprint.length, footprint.width) / 2

function pairClashes(game: Game, [first, second]: [Option, Option], partners: [number, number]): Clash[] {
  const touching = radiusOf(first.robot) + radiusOf(second.robot)
  const at = (id: string) => placeOf(game, id)?.at
  const near = (a: Point | undefined, b: Point | undefined): Nearness | null => {
    if (!a || !b) return null
    const distance = Math.hypot(a[0] - b[0], a[1] - b[1])
    return distance < touching - rounding ? { distance, touching } : null
  }
  // Whoever begins on top of each other is on top of each other at 0 s, too: said once.
  const start = near(at(first.start), at(second.start))
  if (start) return [{ kind: 'start', partners, ...start }]
  const motions = [motionOf(game, first), motionOf(game, second)] as const
  const met = motions[0] && motions[1] && firstMeeting([motions[0], motions[1]], touching - rounding, game.clock.auto)
  if (met) return [{ kind: 'path', partners, at: met.at, distance: met.distance, touching }]
  const end = near(endOf(game, first), endOf(game, second))
  return end ? [{ kind: 'end', partners, ...end }] : []
}

function endOf(game: Game, option: Option): Point | undefined {
  return placeOf(game, routineOf(option)?.endsAt ?? option.start)?.at
}

/** Where an option's robot is in autonomous; null for a routine that does not say. */
function motionOf(game: Game, option: Option): Motion | null {
  const routine = routineOf(option)
  if (routine?.path && routine.path.length > 0) return routine.path.toSorted(([a], [b]) => a - b)
  const start = placeOf(game, option.start)?.at
  return routine || !start ? null : [[0, ...start]]
}

function piecesClashes(game: Game, routines: readonly (Auto | null)[]): Clash[] {
  return game.sources.flatMap(({ id, stock }): Clash[] => {
    if (stock === null) return []
    const taken = routines.map((routine) =>
      (routine?.takes ?? []).reduce((sum, { source, count }) => sum + (source === id ? count : 0), 0),
    )
    const partners = taken.flatMap((count, position) => (count > 0 ? [position] : []))
    const wanted = taken.reduce((sum, count) => sum + count, 0)
    return partners.length > 1 && wanted > stock ? [{ kind: 'pieces', partners, source: id, wanted, stock }] : []
  })
}
