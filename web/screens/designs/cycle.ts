import type { Game, Option, Robot, Trip } from '../../../src/model/documents/types.ts'
import type { LegRequest } from '../../../src/model/leg/types.ts'
import type { Action, PlanNode, QuickPlan, WorthLeg } from '../../../src/model/plan/types.ts'
import type { Place } from '../../data/difference.ts'
import { spotName } from '../../words/actions.ts'
import { words } from '../../words/catalogue.ts'

/** One scoring trip: from the goal's spot to a source, and back to the goal. */
export interface Cycle {
  source: string
  sourceSpot: string
  load: number
  goal: string
  entry: number
  goalSpot: string
}

type Policy = QuickPlan['policy']

const sameNode = (a: PlanNode, b: PlanNode): boolean =>
  a.at === b.at && a.load?.piece === b.load?.piece && a.load?.count === b.load?.count

const bestAt = (policy: Policy, node: PlanNode, timeLeft: number): Action | null =>
  policy.find((entry) => sameNode(entry.node, node))?.bands.find((band) => band.from >= timeLeft && timeLeft > band.to)
    ?.action ?? null

const pieceOf = (game: Game, source: string): string => game.sources.find(({ id }) => id === source)?.piece ?? ''

/** Where an action leads: the node after it, or null at the end. */
export function after(game: Game, action: Action): PlanNode | null {
  if (action.kind === 'collect')
    return { at: action.spot, load: { piece: pieceOf(game, action.source), count: action.load } }
  if (action.kind === 'score') return { at: action.spot, load: null }
  return null
}

/** The nodes that the plan can come to from its start, in the order in which it first does. */
export function reachable(game: Game, policy: Policy, start: PlanNode): PlanNode[] {
  const found: PlanNode[] = [start]
  for (const node of found)
    for (const band of policy.find((entry) => sameNode(entry.node, node))?.bands ?? []) {
      const next = after(game, band.action)
      if (next && !found.some((known) => sameNode(known, next))) found.push(next)
    }
  return found
}

/** Where teleop begins, and with what in hand. */
export function teleopStart(option: Option): PlanNode {
  const auto = option.robot.autos.find(({ id }) => id === option.auto)
  return auto ? { at: auto.endsAt, load: auto.holding } : { at: option.start, load: option.robot.preload }
}

/** The cycle that the plan does with most of the match still to come. */
export function typicalCycle(game: Game, option: Option, policy: Policy): Cycle | null {
  let node: PlanNode | null = teleopStart(option)
  let collected: (Action & { kind: 'collect' }) | null = null
  for (let move = 0; node && move < 8; move++) {
    const action = bestAt(policy, node, game.clock.teleop * 0.6)
    if (!action) break
    if (action.kind === 'collect') collected = action
    if (action.kind === 'score' && collected)
      return {
        source: collected.source,
        sourceSpot: collected.spot,
        load: collected.load,
        goal: action.goal,
        entry: action.entry,
        goalSpot: action.spot,
      }
    node = after(game, action)
  }
  return cycles(game, option)[0] ?? null
}

/** Every pair of source and way to score that robot and role share, at each pair's first spots. */
export function cycles(game: Game, option: Option): Cycle[] {
  const { robot, role } = option
  return game.sources
    .filter(({ id }) => role.sources.includes(id) && robot.collect[id])
    .flatMap((source) =>
      game.goals
        .filter(({ id, accepts }) => role.goals.includes(id) && accepts.includes(source.piece) && robot.score[id])
        .flatMap((goal) =>
          (robot.score[goal.id] ?? []).map((way, entry) => ({
            source: source.id,
            sourceSpot: source.spots[0]!.id,
            load: robot.carries[source.piece] ?? 1,
            goal: goal.id,
            entry,
            goalSpot: way.spots === 'any' ? goal.spots[0]!.id : (way.spots[0] ?? goal.spots[0]!.id),
          })),
        ),
    )
}

/** A cycle as long as robot and role do it; another one of theirs otherwise, and null where there is none. */
export function stillThere(game: Game, option: Option, cycle: Cycle): Cycle | null {
  const all = cycles(game, option)
  const found = all.find((one) => one.source === cycle.source && one.goal === cycle.goal && one.entry === cycle.entry)
  if (!found) return all[0] ?? null
  const near = spotsOf(game, option, found).includes(cycle.goalSpot)
  if (near && cycle.load <= found.load) return cycle
  return { ...cycle, load: Math.min(cycle.load, found.load), goalSpot: near ? cycle.goalSpot : found.goalSpot }
}

/** The same trip by another robot, in its own way of scoring there and with what it carries; null where it can not. */
export function sameTrip(game: Game, option: Option, cycle: Cycle): Cycle | null {
  const able = cycles(game, option).filter(({ source, goal }) => source === cycle.source && goal === cycle.goal)
  const near = (one: Cycle) => spotsOf(game, option, one).includes(cycle.goalSpot)
  const found = able.find((one) => one.entry === cycle.entry && near(one)) ?? able.find(near) ?? able[0]
  if (!found) return null
  const goalSpot = near(found) ? cycle.goalSpot : found.goalSpot
  return { ...found, sourceSpot: cycle.sourceSpot, goalSpot, load: Math.min(cycle.load, found.load) }
}

/** The spots from which a cycle's way of scoring is done. */
function spotsOf(game: Game, option: Option, { goal, entry }: Cycle): string[] {
  const spots = option.robot.score[goal]?.[entry]?.spots
  if (spots !== 'any') return spots ?? []
  return game.goals.find(({ id }) => id === goal)?.spots.map(({ id }) => id) ?? []
}

export type View = { show: 'cycle' | 'collect' | 'score' } | { show: 'finish'; finish: string }

/** A leg of the strip: what is asked of the model, where its trip stands in the robot, and how the plan calls it. */
export interface ShownLeg {
  id: string
  name: string
  request: LegRequest
  trip: Place
  load: number
  worth: WorthLeg
}

/** The legs that a view shows, one after the other. */
export function shownLegs(game: Game, cycle: Cycle, view: View): ShownLeg[] {
  const names = words().strip.legs
  const collect: ShownLeg = {
    id: `collect/${cycle.source}`,
    name: names.collect(spotName(game, cycle.sourceSpot)),
    request: { kind: 'collect', source: cycle.source, spot: cycle.sourceSpot, from: cycle.goalSpot, load: cycle.load },
    trip: ['collect', cycle.source],
    load: cycle.load,
    worth: { kind: 'collect', source: cycle.source },
  }
  const score: ShownLeg = {
    id: `score/${cycle.goal}/${cycle.entry}`,
    name: names.score(spotName(game, cycle.goalSpot)),
    request: {
      kind: 'score',
      goal: cycle.goal,
      entry: cycle.entry,
      spot: cycle.goalSpot,
      from: cycle.sourceSpot,
      piece: pieceOf(game, cycle.source),
      load: cycle.load,
    },
    trip: ['score', cycle.goal, cycle.entry],
    load: cycle.load,
    worth: { kind: 'score', goal: cycle.goal, entry: cycle.entry },
  }
  if (view.show !== 'finish')
    return view.show === 'cycle' ? [collect, score] : [view.show === 'collect' ? collect : score]
  const spot = game.finishes.find(({ id }) => id === view.finish)?.spots[0]?.id
  if (!spot) return []
  return [
    {
      id: `finish/${view.finish}`,
      name: names.finish(spotName(game, spot)),
      request: { kind: 'finish', finish: view.finish, spot, from: cycle.goalSpot },
      trip: ['finish', view.finish],
      load: 1,
      worth: { kind: 'finish', finish: view.finish },
    },
  ]
}

export const sameWorthLeg = (a: WorthLeg, b: WorthLeg): boolean =>
  JSON.stringify(sorted(a)) === JSON.stringify(sorted(b))
const sorted = (leg: WorthLeg) => Object.entries(leg).sort(([a], [b]) => a.localeCompare(b))

/** Names of a trip's stages by id. */
export const stageNames = (trip: Trip | undefined): { [stage: string]: string } =>
  trip && 'stages' in trip ? Object.fromEntries(trip.stages.map(({ id, name }) => [id, name])) : {}

/** Stages that are done once for each piece of a load, and how often that is. */
export const stageRepeats = (trip: Trip | undefined, load: number): { [stage: string]: number } =>
  trip && 'stages' in trip ? Object.fromEntries(trip.stages.filter(({ each }) => each).map(({ id }) => [id, load])) : {}

export const tripOf = (robot: Robot, leg: ShownLeg): Trip | undefined => {
  const { request } = leg
  if (request.kind === 'collect') return robot.collect[request.source]
  if (request.kind === 'finish') return robot.finish[request.finish]
  return robot.score[request.goal]?.[request.entry]
}
